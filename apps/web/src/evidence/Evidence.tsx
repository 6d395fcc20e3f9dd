export function Evidence(_: { readonly opened?: unknown; readonly openAgain?: unknown }) {
  return null;
}
