/** Lets the page answer keys and draw between two pieces of long work. */
export const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
