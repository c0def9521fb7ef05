/** Lets all that is due go first: messages that have come, and what others have just begun. */
export function nextTurn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
