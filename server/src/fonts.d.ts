/** The build and the tests give a font as its bytes. */
declare module '*.ttf' {
  const bytes: Uint8Array;
  export default bytes;
}
