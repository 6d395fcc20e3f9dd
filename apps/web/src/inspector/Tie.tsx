import { useLayoutEffect, useState } from 'react';

/** A line from the number to the cut of its sheet, where the number is in view. */
export function Tie({ id, act }: { readonly id: string; readonly act: boolean }) {
  const [from, setFrom] = useState<{ readonly x: number; readonly y: number; readonly to: number }>();
  useLayoutEffect(() => {
    const place = () => {
      const cut = document.querySelector('.inspector')?.getBoundingClientRect();
      const number = document.querySelector(`main [data-quantity="${CSS.escape(id)}"]`)?.getBoundingClientRect();
      if (!cut || !number || cut.left < 200 || number.right > cut.left - 12 || number.width === 0) return setFrom(undefined);
      const y = number.top + number.height / 2;
      setFrom(y < 70 || y > window.innerHeight - 60 ? undefined : { x: number.right + 6, y, to: cut.left });
    };
    place();
    const timer = setInterval(place, 300);
    window.addEventListener('scroll', place, true);
    window.addEventListener('resize', place);
    return () => {
      clearInterval(timer);
      window.removeEventListener('scroll', place, true);
      window.removeEventListener('resize', place);
    };
  }, [id]);
  if (!from) return null;
  return (
    <svg className={act ? 'tie tie-act' : 'tie'} aria-hidden="true" width="100%" height="100%">
      <line x1={from.x} y1={from.y} x2={from.to} y2={from.y} />
      <circle cx={from.x} cy={from.y} r="4" />
    </svg>
  );
}
