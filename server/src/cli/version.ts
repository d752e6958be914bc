/** The version of the project, as its package states it. */
import manifest from '../../package.json' with { type: 'json' };

export const { version } = manifest;
