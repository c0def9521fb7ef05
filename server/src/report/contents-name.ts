/** What files are called that are in no commit: by the hash of what they hold. */

const DIGITS = 12;

/** `contents 0a1b2c3d4e5f` @param texts the site's first, as `packFiles` gives them */
export async function contentsName(texts: readonly string[]): Promise<string> {
  const bytes = new TextEncoder().encode(texts.map((text) => `${text}\0`).join(''));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const hex = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `contents ${hex.slice(0, DIGITS)}`;
}
