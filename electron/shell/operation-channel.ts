/** The one IPC channel: named apart from its handler, so that the preload bundle holds the name and nothing else. */
export const operationChannel = 'submark:operation';
