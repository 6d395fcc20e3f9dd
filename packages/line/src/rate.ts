import type { Line } from '@barwright/plant';
import { kilogramPerHour, percent, type Builder } from '@barwright/bar';

/** Lanes, speeds and the rate at which the line cuts, coats, wraps: rated, and as planned with its stops. */
export function rateSteps(b: Builder, line: Line): void {
  const speed = { unit: 'm/s', show: 'm/min', decimals: 2 };
  const perMinute = { unit: '1/min', show: 'bars/min', decimals: 0 };
  b.entered('line.lanes', 'lanes that the slitter cuts', line.lanes, { unit: '1', decimals: 0 });
  b.entered('line.edge_trim', 'trim on each edge of the slab', line.edgeTrim, { unit: 'm', show: 'mm', decimals: 1 });
  b.entered('line.slab_speed', 'speed of the slab', line.slabSpeed, speed);
  b.entered('line.gap', 'gap between bars along the belt after spreading', line.gap, { unit: 'm', show: 'mm', decimals: 0 });
  b.step({
    title: 'Rated speed of the line',
    inputs: ['line.lanes', 'line.slab_speed', 'bar.cut_length'],
    outputs: [{ id: 'line.rate', meaning: 'bars cut per minute while the slab runs', ...perMinute }],
    equation: 'rate = lanes · slab speed / cut length',
    run: (lanes: number, v: number, length: number) => (60 * lanes * v) / length,
  });
  b.step({
    title: 'Cuts of the guillotine',
    inputs: ['line.rate', 'line.lanes'],
    outputs: [{ id: 'line.cuts', meaning: 'strokes of the guillotine', unit: '1/min', decimals: 1 }],
    equation: 'rate / lanes',
    run: (rate: number, lanes: number) => rate / lanes,
  });
  b.step({
    title: 'Width of the slab',
    inputs: ['line.lanes', 'bar.cut_width', 'line.edge_trim'],
    outputs: [
      { id: 'line.slab_width', meaning: 'width of the slab before trimming', unit: 'm', show: 'mm', decimals: 0 },
      { id: 'line.trim_share', meaning: 'edge trim, share of the slab', ...percent },
    ],
    equation: 'width = lanes · cut width + 2 · trim; share = 2 · trim / width',
    run: (lanes: number, width: number, trim: number) => {
      const slab = lanes * width + 2 * trim;
      return [slab, (2 * trim) / slab];
    },
  });
  b.step({
    title: 'Speed of the enrober belt',
    inputs: ['line.cuts', 'bar.cut_length', 'line.gap'],
    outputs: [{ id: 'line.belt_speed', meaning: 'speed of the enrober and tunnel belt', ...speed }],
    equation: 'belt speed = cuts · (cut length + gap)',
    run: (cuts: number, length: number, gap: number) => (cuts * (length + gap)) / 60,
  });
  const flows = [
    ['line.centre_flow', 'centres after trimming', 'bar.centre_mass'],
    ['line.bar_flow', 'finished bars', 'bar.mass'],
  ] as const;
  for (const [id, meaning, mass] of flows) {
    b.step({
      title: `Flow of ${meaning}`,
      inputs: ['line.rate', mass],
      outputs: [{ id, meaning: `flow of ${meaning} at rated speed`, ...kilogramPerHour }],
      equation: 'rate · mass',
      run: (rate: number, m: number) => 60 * rate * m,
    });
  }
  b.step({
    title: 'Flow of the slab',
    inputs: ['line.centre_flow', 'line.trim_share'],
    outputs: [
      { id: 'line.slab_flow', meaning: 'flow of the slab before trimming, at rated speed', ...kilogramPerHour },
      { id: 'line.trim_flow', meaning: 'edge trim at rated speed', ...kilogramPerHour },
    ],
    equation: 'slab = centres / (1 − trim share)',
    run: (centres: number, share: number) => [centres / (1 - share), centres / (1 - share) - centres],
  });
  if (line.scrap) {
    b.entered('line.scrap', 'share of cut bars that reach no case', line.scrap, { ...percent, decimals: 1 });
    b.step({
      title: 'Scrap after the cutter',
      inputs: ['line.bar_flow', 'line.scrap'],
      outputs: [{ id: 'line.scrap_flow', meaning: 'bars scrapped after the cutter, at rated speed', ...kilogramPerHour }],
      equation: 'finished bars · scrap',
      run: (flow: number, scrap: number) => flow * scrap,
    });
  }
  b.step({
    title: 'Given away at rated speed',
    inputs: ['line.rate', 'bar.giveaway'],
    outputs: [{ id: 'line.giveaway_flow', meaning: 'mass above the declared mass, at rated speed', ...kilogramPerHour }],
    equation: 'rate · mass given away',
    run: (rate: number, m: number) => 60 * rate * m,
  });
}
