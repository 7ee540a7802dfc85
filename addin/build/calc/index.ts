export * from './oxt';
export * from './packageFiles';
