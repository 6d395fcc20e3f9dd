export function Band(_: { readonly opened?: unknown; readonly openAgain?: unknown }) {
  return null;
}
