/** A computation that is made when it is first asked for and remembered from then on. */
export function once<T>(compute: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    if (!made) made = { value: compute() };
    return made.value;
  };
}
