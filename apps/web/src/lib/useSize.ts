import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** Height of the window, as it changes. */
export function useWindowHeight(): number {
  const [height, setHeight] = useState(() => window.innerHeight);
  useLayoutEffect(() => {
    const read = () => setHeight(window.innerHeight);
    window.addEventListener('resize', read);
    return () => window.removeEventListener('resize', read);
  }, []);
  return height;
}

/** Width and height of an element, as they change. */
export function useSize<T extends HTMLElement>(): readonly [RefObject<T | null>, { readonly width: number; readonly height: number }] {
  const ref = useRef<T>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const read = () => {
      const { clientWidth: width, clientHeight: height } = element;
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
