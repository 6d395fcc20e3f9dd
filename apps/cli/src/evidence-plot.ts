import { scatter, toSvg, type ScatterPoint } from '@barwright/drawing';
import { runModel, type CheckResult, type Model } from '@barwright/science';

/** A picture of a model against what others found, as SVG; nothing where fewer than three numbers can be compared. */
export function plotOf(model: Model, results: readonly CheckResult[]): string | undefined {
  const outside = results.filter((r) => r.check.kind !== 'code' && typeof r.check.expected === 'number' && typeof r.computed === 'number');
  const byOutput = group(outside, (r) => r.check.output);
  const best = [...byOutput.values()].sort((a, b) => b.length - a.length)[0];
  if (!best || best.length < 3) return undefined;
  return curve(model, best) ?? parity(model, best);
}

function group<T>(list: readonly T[], key: (item: T) => string): Map<string, T[]> {
  const map = new Map<string, T[]>();
  for (const item of list) map.set(key(item), [...(map.get(key(item)) ?? []), item]);
  return map;
}

const size = { width: 460, height: 300 };

function pointOf(x: number, result: CheckResult): ScatterPoint {
  return { x, y: result.check.expected as number, off: result.check.tolerance, red: !result.inside };
}

/** Where one input alone varies: published points as rings over our curve. */
function curve(model: Model, results: readonly CheckResult[]): string | undefined {
  const numeric = model.inputs.filter((input) => (input.kind ?? 'number') === 'number');
  for (const input of numeric) {
    const rest = (r: CheckResult) =>
      JSON.stringify(
        Object.entries(r.check.inputs)
          .filter(([key]) => key !== input.key)
          .sort(),
      );
    const family = [...group(results, rest).values()].sort((a, b) => b.length - a.length)[0]!;
    const xs = family.map((r) => r.check.inputs[input.key]);
    if (family.length < 3 || !xs.every((x) => typeof x === 'number') || new Set(xs).size < 3) continue;
    const [low, high] = [Math.min(...(xs as number[])), Math.max(...(xs as number[]))];
    const margin = 0.06 * (high - low);
    const [from, to] = [Math.max(low - margin, input.possible?.[0] ?? -Infinity), Math.min(high + margin, input.possible?.[1] ?? Infinity)];
    const line: [number, number][] = [];
    for (let i = 0; i <= 60; i++) {
      const x = from + ((to - from) * i) / 60;
      try {
        const value = runModel(model, { ...family[0]!.check.inputs, [input.key]: x }).outputs[family[0]!.check.output]?.value;
        if (typeof value === 'number' && Number.isFinite(value)) line.push([x, value]);
      } catch {
        continue; // beyond what the model answers
      }
    }
    const unit = family[0]!.unit;
    return drawn(
      model,
      family.map((r) => pointOf(r.check.inputs[input.key] as number, r)),
      line,
      `${input.key} (${input.unit})`,
      `${family[0]!.check.output} (${unit})`,
      input.fitted,
    );
  }
  return undefined;
}

/** Where inputs vary together: computed against found, on the line of equality. */
function parity(model: Model, results: readonly CheckResult[]): string {
  const points = results.map((r): ScatterPoint => ({
    x: r.computed as number,
    y: r.check.expected as number,
    off: r.check.tolerance,
    red: !r.inside,
  }));
  const all = points.flatMap((point) => [point.x, point.y]);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const { output } = results[0]!.check;
  return drawn(
    model,
    points,
    [
      [low, low],
      [high, high],
    ],
    `computed ${output} (${results[0]!.unit})`,
    'found by others',
    undefined,
  );
}

function drawn(
  model: Model,
  points: readonly ScatterPoint[],
  line: readonly (readonly [number, number])[],
  xLabel: string,
  yLabel: string,
  fitted: readonly [number, number] | undefined,
): string {
  const xs = [...points.map((point) => point.x), ...line.map(([x]) => x)];
  const ys = [...points.flatMap((point) => [point.y - (point.off ?? 0), point.y + (point.off ?? 0)]), ...line.map(([, y]) => y)];
  const wide = (values: readonly number[]): [number, number] => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const margin = high > low ? 0.04 * (high - low) : Math.max(1e-9, 0.1 * Math.abs(high));
    return [low - margin, high + margin];
  };
  const picture = scatter({
    ...size,
    x: wide(xs),
    y: wide(ys),
    points,
    line: line as [number, number][],
    xLabel,
    yLabel,
    ...(fitted ? { fitted } : {}),
  });
  return toSvg(picture.marks, {
    width: picture.width,
    height: picture.height,
    theme: 'day',
    title: `${model.title}: rings are what others found, with their tolerance; the line is computed`,
  });
}
