/** The command could not do its work. The message is one line for the person who ran it. */
export class CommandFailure extends Error {
  override readonly name = 'CommandFailure';
}

/** Exit statuses that scripts may rely on. */
export const exitStatus = { nothingFound: 0, found: 1, failed: 2 } as const;
