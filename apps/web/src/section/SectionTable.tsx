import { useState } from 'react';
import { useSheet, useShown } from '../engine/sheet.js';
import type { Catalog } from '../engine/protocol.js';
import { withUnit } from '../number/words.js';

/** The same numbers as a table, for readers and for those who cannot see the drawing. */
export function SectionTable() {
  const { catalog } = useSheet();
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="as-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>As a table</summary>
      {isOpen ? <Tables catalog={catalog!} /> : null}
    </details>
  );
}

function Tables({ catalog }: { readonly catalog: Catalog }) {
  return (
    <>
      <table>
        <caption>Parts of the bar from the top</caption>
        <thead>
          <tr>
            <th scope="col">part</th>
            <th scope="col">mass</th>
            <th scope="col">thickness</th>
            <th scope="col">water</th>
            <th scope="col">water activity</th>
            <th scope="col">cost</th>
          </tr>
        </thead>
        <tbody>
          {catalog.parts.map(({ id, name, component }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <Cell id={`${id}.mass`} />
              <Cell id={`${id}.thickness`} />
              <Cell id={`${component}.moisture`} />
              <Cell id={`${component}.water_activity`} />
              <Cell id={`${id}.cost`} />
            </tr>
          ))}
          <tr>
            <th scope="row">whole bar</th>
            <Cell id="bar.mass" />
            <Cell id="bar.height" />
            <td>–</td>
            <td>–</td>
            <Cell id="bar.cost" />
          </tr>
        </tbody>
      </table>
      <table>
        <caption>Steps in water activity</caption>
        <tbody>
          {catalog.steps.map(({ id }) => (
            <StepRow key={id} id={id} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function Cell({ id }: { readonly id: string }) {
  const shown = useShown(id);
  return <td>{shown && !Number.isNaN(shown.value) ? withUnit(shown.value, shown.meta) : '–'}</td>;
}

function StepRow({ id }: { readonly id: string }) {
  const shown = useShown(id);
  if (!shown) return null;
  return (
    <tr>
      <th scope="row">{shown.meta.meaning}</th>
      <Cell id={id} />
    </tr>
  );
}
