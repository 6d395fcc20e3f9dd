/** A file that the build copies as it is; the import gives its address. */
declare module '*?url' {
  const address: string;
  export default address;
}
