/** Assets and style sheets that the build resolves. */
declare module '*.css?url' {
  const address: string;
  export default address;
}
declare module '*.css';
