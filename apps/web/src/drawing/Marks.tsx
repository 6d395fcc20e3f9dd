import { attributes, spanAttributes, type Mark } from '@barwright/drawing';
import { memo, type SVGProps } from 'react';

/** Marks as SVG: a mark that is the same object as before is not looked at again. */
export function Marks({ marks }: { readonly marks: readonly Mark[] }) {
  return marks.map((mark, at) => <MarkView key={at} mark={mark} />);
}

const MarkView = memo(function MarkView({ mark }: { readonly mark: Mark }) {
  const { fontFeatureSettings: _figures, ...rest } = attributes(mark);
  const own = rest as SVGProps<SVGElement> as Record<string, never>;
  switch (mark.tag) {
    case 'path':
      return <path {...own} />;
    case 'line':
      return <line {...own} />;
    case 'rect':
      return <rect {...own} />;
    case 'circle':
      return <circle {...own} />;
    case 'g':
      return (
        <g {...own}>
          <Marks marks={mark.children} />
        </g>
      );
    case 'text':
      return (
        <text {...own}>
          {typeof mark.text === 'string'
            ? mark.text
            : mark.text.map((span, at) => (
                <tspan key={at} {...(spanAttributes(span) as Record<string, never>)}>
                  {span.text}
                </tspan>
              ))}
        </text>
      );
  }
});

/** A whole drawing; hidden from readers unless it is named, since its numbers stand beside it. */
export function Picture({
  marks,
  width,
  height,
  name,
  className,
}: {
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
  readonly name?: string;
  readonly className?: string;
}) {
  return (
    <svg
      className={className}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      {...(name === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': name })}
    >
      <Marks marks={marks} />
    </svg>
  );
}
