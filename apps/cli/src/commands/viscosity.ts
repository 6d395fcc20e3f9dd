import {
  chocolateOf,
  flowOptions,
  flowTable,
  type FlowAnswer,
  type FlowOption,
  type FlowTable,
  flowLawNames,
  flowParameterNames,
} from '@barwright/line';
import { fitCasson, fitHerschelBulkley, fitWindhab, flowReport, type FlowFit, type FlowReport } from '@barwright/science';
import { openPlant, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { readRows } from '../rows.js';
import { Misused, type Out } from '../out.js';
import { between, n, section } from '../say.js';
import { table } from '../text.js';

interface ViscosityOptions extends PlantOptions {
  readonly component?: string;
  readonly yield?: string;
  readonly plastic?: string;
  readonly measured?: string;
  readonly measuredPlastic?: string;
  readonly curve?: string;
}

/** Ways to a wanted yield value; or the flow values of a viscometer's table. */
export async function viscosityCommand(folder: string, options: ViscosityOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const component = chocolateOf(opened, options.component);
  const curve = options.curve === undefined ? undefined : await fitted(options.curve);
  const wanted = maybeQuantity('--yield', options.yield, 'pressure', '9 Pa');
  if (wanted === undefined && !curve)
    throw new Misused('Say what is wanted or what was measured: --yield "9 Pa", or --curve with the table of a viscometer');
  const casson = curve?.casson.law.law === 'casson' ? curve.casson.law : undefined;
  const measured = {
    yieldValue: maybeQuantity('--measured', options.measured, 'pressure', '12 Pa') ?? casson?.yieldValue,
    plasticViscosity: maybeQuantity('--measured-plastic', options.measuredPlastic, 'viscosity', '2.3 Pa·s') ?? casson?.plasticViscosity,
  };
  const plastic = maybeQuantity('--plastic', options.plastic, 'viscosity', '2.3 Pa·s');
  const answer =
    wanted === undefined
      ? undefined
      : flowOptions(opened, opened.session, component, {
          yieldValue: wanted,
          ...(plastic === undefined ? {} : { plasticViscosity: plastic }),
          measured: {
            ...(measured.yieldValue === undefined ? {} : { yieldValue: measured.yieldValue }),
            ...(measured.plasticViscosity === undefined ? {} : { plasticViscosity: measured.plasticViscosity }),
          },
        });
  if (options.json) out.json({ ...(curve ? { curve: curveJson(curve) } : {}), ...(answer ? answerJson(answer) : {}) });
  else {
    if (curve) printCurve(curve, out);
    if (curve && answer) out.line();
    if (answer) printAnswer(answer, out);
  }
}

interface Curve {
  readonly name: string;
  readonly table: FlowTable;
  readonly casson: FlowFit;
  readonly others: readonly FlowFit[];
  readonly report?: FlowReport;
}

/** Fits of every law that the number of points allows, and the interpolated report where the rates reach from 5 to 40 1/s. */
async function fitted(file: string): Promise<Curve> {
  const { name, rows } = await readRows(file);
  const read = flowTable(rows, name);
  const { up, down } = read;
  const rates = up.map(({ rate }) => rate);
  const spans = Math.min(...rates) <= 5 && Math.max(...rates) >= 40;
  const downSpans = down.length > 1 && Math.min(...down.map(({ rate }) => rate)) <= 5 && Math.max(...down.map(({ rate }) => rate)) >= 40;
  return {
    name,
    table: read,
    casson: fitCasson(up),
    others: [...(up.length > 4 ? [fitWindhab(up)] : []), ...(up.length > 3 ? [fitHerschelBulkley(up)] : [])],
    ...(spans ? { report: flowReport(up, downSpans ? down : []) } : {}),
  };
}

function curveJson({ table: read, casson, others, report }: Curve): unknown {
  const fit = ({ law, parameters, residual, r2, points }: FlowFit) => ({ law: law.law, parameters, residual_pa: residual, r2, points });
  return {
    points_up: read.up.length,
    points_down: read.down.length,
    fits: [casson, ...others].map(fit),
    report: report
      ? {
          stress_at_5_pa: report.stressAt5,
          viscosity_at_40_pa_s: report.viscosityAt40,
          two_point_yield_pa: report.twoPointYield,
          two_point_plastic_pa_s: report.twoPointPlastic,
          thixotropy_at_5_pa: report.thixotropyAt5 ?? null,
        }
      : null,
    said: read.said,
  };
}

function optionJson({ name, add, yieldValue, plasticViscosity, meets, bought, cost, lawful, law, coat }: FlowOption): unknown {
  return {
    name,
    add_cocoa_butter: add.cocoaButter,
    add_lecithin: add.lecithin,
    add_e476: add.e476,
    yield_value_pa: yieldValue,
    plastic_viscosity_pa_s: plasticViscosity,
    meets,
    bought_per_kg: bought,
    cost_per_kg: cost,
    lawful,
    law,
    coat_g: coat ? { value: 1000 * coat.mass, low: 1000 * coat.low, high: 1000 * coat.high } : null,
  };
}

function answerJson(answer: FlowAnswer): Record<string, unknown> {
  return {
    component: answer.component,
    currency: answer.currency,
    now: { yield_value_pa: answer.now.yieldValue, plastic_viscosity_pa_s: answer.now.plasticViscosity },
    target: { yield_value_pa: answer.target.yieldValue, plastic_viscosity_pa_s: answer.target.plasticViscosity },
    coat_now_g: answer.coatNow ? 1000 * answer.coatNow.mass : null,
    best: answer.best ? optionJson(answer.best) : null,
    options: answer.options.map(optionJson),
    steps: answer.steps.map(({ name, share, yieldFactor, plasticFactor, cost }) => ({
      name,
      share,
      yield_factor: yieldFactor,
      plastic_factor: plasticFactor,
      cost_per_kg: cost,
    })),
    assumed: answer.assumed,
    notes: answer.notes,
  };
}

function printCurve({ name, table: read, casson, others, report }: Curve, out: Out): void {
  const rates = read.up.map(({ rate }) => rate);
  out.line(
    out.style.strong(
      `${name}: ${read.up.length} points up${read.down.length > 0 ? `, ${read.down.length} down` : ''}, ${n(Math.min(...rates), 1)} to ${n(Math.max(...rates), 1)} 1/s.`,
    ),
  );
  for (const { law, parameters, residual, r2 } of [casson, ...others]) {
    const words = Object.entries(parameters).map(([key, value]) => {
      const [title, unit, digits] = flowParameterNames[key]!;
      return `${title} ${n(value.value, digits)}${unit ? ` ${unit}` : ''} (${between(value, digits)})`;
    });
    section(out, `${flowLawNames[law.law]}, residual ${n(residual, 2)} Pa, R² ${n(r2, 4)}`, words);
  }
  if (report)
    section(out, 'Interpolated report (ICA 46, 2000)', [
      `stress at 5 1/s ${n(report.stressAt5, 1)} Pa; viscosity at 40 1/s ${n(report.viscosityAt40, 2)} Pa·s${report.thixotropyAt5 === undefined ? '' : `; up less down at 5 1/s ${n(report.thixotropyAt5, 1)} Pa`}.`,
    ]);
  section(out, 'How the table was read', [
    ...read.said,
    'Limits are 95 % of the fit alone. Laboratories differ by more: compare readings of one instrument only.',
  ]);
}

function printAnswer(answer: FlowAnswer, out: Out): void {
  const { best, currency } = answer;
  const money = (x: number) => `${currency} ${n(x, 4)}`;
  out.line(
    out.style.strong(
      best
        ? best.name === 'nothing'
          ? `${answer.component} is there already: nothing to add.`
          : `${best.name}: ${additions(best)}, ${money(best.cost)} a kg.`
        : `No lawful addition brings ${answer.component} there.`,
    ),
  );
  out.line(
    `From ${n(answer.now.yieldValue, 1)} Pa and ${n(answer.now.plasticViscosity, 2)} Pa·s to ${n(answer.target.yieldValue, 1)} Pa with ${n(answer.target.plasticViscosity, 2)} Pa·s.${answer.coatNow ? ` Coat now ${n(1000 * answer.coatNow.mass, 1)} g.` : ''}`,
  );
  out.line();
  const rows = [['', 'add', 'yield value', 'plastic viscosity', 'cost a kg', 'coat', ''].map((cell) => out.style.faint(cell))];
  for (const option of answer.options) {
    rows.push([
      `  ${option.name}`,
      additions(option),
      `${n(option.yieldValue.value, 1)} Pa (${between(option.yieldValue, 1)})`,
      `${n(option.plasticViscosity.value, 2)} Pa·s (${between(option.plasticViscosity, 2)})`,
      money(option.cost),
      option.coat ? `${n(1000 * option.coat.mass, 1)} g` : '',
      !option.lawful ? out.style.act('not lawful') : option.meets ? '' : 'does not get there',
    ]);
  }
  for (const line of table(rows, [false, true, true, true, true, true])) out.line(line);
  section(
    out,
    'One step of each, alone',
    answer.steps.map(
      ({ name, share, yieldFactor, plasticFactor, cost }) =>
        `${name} +${+(100 * share).toFixed(2)} %: yield value ${n(100 * (yieldFactor.value - 1), 1)} % (${between({ low: yieldFactor.low - 1, high: yieldFactor.high - 1 }, 1, 100)}), plastic viscosity ${n(100 * (plasticFactor.value - 1), 1)} % (${between({ low: plasticFactor.low - 1, high: plasticFactor.high - 1 }, 1, 100)}), ${money(cost)} a kg.`,
    ),
  );
  section(out, 'In law', best?.law ?? []);
  section(out, 'Mind', [
    ...answer.notes,
    ...(answer.assumed.length > 0
      ? [
          `Sizes not measured by the plant yet: ${answer.assumed.length} of its ladder, such as ${answer.assumed.slice(0, 2).join(' and ')}; set them with --set or in the chain.`,
        ]
      : []),
  ]);
}

function additions({ add }: FlowOption): string {
  const parts = [
    ['cocoa butter', add.cocoaButter],
    ['lecithin', add.lecithin],
    ['E476', add.e476],
  ] as const;
  return parts.flatMap(([name, share]) => (share > 0 ? [`+${+(100 * share).toFixed(2)} % ${name}`] : [])).join(', ') || 'nothing';
}
