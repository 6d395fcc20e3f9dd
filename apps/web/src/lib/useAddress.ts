import { useCallback, useMemo } from 'react';
import { useLocation, useSearch } from 'wouter';
import { readAddress, writeAddress, type Address } from './address.js';

/** Parts to change; `undefined` takes one away. */
export type Going = { readonly [K in keyof Address]?: Address[K] | undefined };
export type Go = (to: Going, replace?: boolean) => void;

/** Where one is, and the way to elsewhere. `replace`: without a new entry to go back to. */
export function useAddress(): readonly [Address, Go] {
  const [path, navigate] = useLocation();
  const search = useSearch();
  const address = useMemo(() => readAddress(path, search), [path, search]);
  const go = useCallback(
    (to: Going, replace = false) => {
      // Read anew: an address may have been replaced since this was made.
      const now = readAddress(window.location.pathname, window.location.search);
      const next = writeAddress({ ...now, ...to } as Address);
      if (next !== window.location.pathname + window.location.search) navigate(next, { replace });
    },
    [navigate],
  );
  return [address, go];
}
