export function Bench(_: { readonly opened?: unknown; readonly openAgain?: unknown }) {
  return null;
}
