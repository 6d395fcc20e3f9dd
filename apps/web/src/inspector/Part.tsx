import type { ReactNode } from 'react';

/** A part of the sheet under its small name. */
export function Part({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <section className="about-part">
      <h3 className="about-name">{name}</h3>
      <div className="about-body">{children}</div>
    </section>
  );
}
