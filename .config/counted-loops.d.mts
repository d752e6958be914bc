export function countedLoops(configFile: string): (path: string) => string | undefined;
