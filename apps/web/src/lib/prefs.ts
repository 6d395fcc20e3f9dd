import { useSyncExternalStore } from 'react';
import type { Units } from '../engine/protocol.js';

/** What a person chose on this device: the habit of reading, and day or night. */
export interface Prefs {
  readonly units: Units;
  readonly theme: 'day' | 'night';
}

const keys = { units: 'barwright.units', theme: 'barwright.theme' } as const;
let prefs: Prefs = { units: kept(keys.units) === 'us' ? 'us' : 'metric', theme: kept(keys.theme) === 'night' ? 'night' : 'day' };
const listeners = new Set<() => void>();

function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function setPref<K extends keyof Prefs>(name: K, value: Prefs[K]): void {
  prefs = { ...prefs, [name]: value };
  try {
    localStorage.setItem(keys[name], value);
  } catch {
    // A browser that keeps nothing still shows it until it is closed.
  }
  if (name === 'theme') showTheme();
  for (const listener of listeners) listener();
}

/** The server reads the cookie and sends the page by day or by night: a page that asked the browser's store first would be seen later. */
export function showTheme(): void {
  const night = prefs.theme === 'night';
  if (night) document.documentElement.dataset.theme = 'night';
  else delete document.documentElement.dataset.theme;
  if (night || document.cookie.includes('barwright_theme=')) {
    document.cookie = `barwright_theme=${prefs.theme}; path=/; max-age=${night ? 31_536_000 : 0}; samesite=strict`;
  }
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const usePrefs = (): Prefs => useSyncExternalStore(subscribe, () => prefs);
export const currentPrefs = (): Prefs => prefs;
