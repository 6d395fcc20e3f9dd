export function Papers(_: { readonly opened?: unknown; readonly openAgain?: unknown }) {
  return null;
}
