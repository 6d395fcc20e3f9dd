import { Command, CommanderError, Option } from 'commander';
import { Misused, Refused, terminal, type Out } from './out.js';

const many = (value: string, before: readonly string[] = []) => [...before, value];

/** Runs one command line. @returns exit code: 0 done, 1 refused, 2 misused */
export async function main(argv: readonly string[]): Promise<number> {
  const out = terminal();
  try {
    await program(out).parseAsync([...argv], { from: 'user' });
    return 0;
  } catch (error) {
    return explainFailure(error, out);
  }
}

function explainFailure(error: unknown, out: Out): number {
  if (error instanceof CommanderError)
    return ['commander.help', 'commander.helpDisplayed', 'commander.version'].includes(error.code) ? 0 : 2;
  if (error instanceof Misused) {
    out.warn(error.message);
    return 2;
  }
  if (error instanceof Refused) {
    if (error.message) out.warn(error.message);
    return 1;
  }
  const code = (error as { code?: unknown }).code;
  out.warn(
    typeof code === 'string'
      ? `${(error as Error).message} [${code}]`
      : `This should not happen: ${(error as Error).message}. Run with BARWRIGHT_DEBUG=1 to see where.`,
  );
  if (process.env['BARWRIGHT_DEBUG']) out.warn(String((error as Error).stack));
  return 1;
}

function program(out: Out): Command {
  const top = new Command('barwright')
    .description('One layered, enrobed bar, one line, one day as a single chain of numbers. It advises; it never drives a machine.')
    .version('0.1.0')
    .exitOverride()
    .configureHelp({ sortSubcommands: false })
    .showHelpAfterError('(add --help for what it takes)')
    .configureOutput({ writeErr: (text) => process.stderr.write(text) });
  top.addHelpText('after', '\nExit codes: 0 done, 1 refused (it says why), 2 misused.\nStart here: barwright sheet examples/pellamoor');
  plantCommand(
    top,
    'sheet',
    'The whole bar on the whole line: every number with its window and origin',
    'sheet examples/pellamoor --bar Kestrowan',
  )
    .option('--html <file>', 'write the run sheet as HTML')
    .option('--pdf <file>', 'write the run sheet as PDF')
    .option('--all', 'show also what lies between the lines: stages, needs, compositions')
    .action(async (folder, options) => (await import('./commands/sheet.js')).sheetCommand(folder, options, out));
  plantCommand(
    top,
    'evaluate',
    'Values of some quantities',
    'evaluate examples/pellamoor bar.mass bar.cost --set caramel.moisture="10.3 %"',
  )
    .argument('[ids...]', 'ids of quantities; all of them when none is named')
    .action(async (folder, ids, options) => (await import('./commands/evaluate.js')).evaluateCommand(folder, ids, options, out));
  plantCommand(top, 'explain', 'Where a number comes from, back to what was entered', 'explain examples/pellamoor bar.cost --depth 2')
    .argument('<id>', 'id of a quantity')
    .option('--depth <n>', 'levels to show; all when left out')
    .action(async (folder, id, options) => (await import('./commands/explain.js')).explainCommand(folder, id, options, out));
  plantCommand(
    top,
    'observe',
    'Put a measurement in place of a value and see what follows',
    'observe examples/pellamoor caramel.moisture="10.3 %" --note "titration, 12:08"',
  )
    .argument('<measurements...>', 'id=value, with its unit')
    .option('--note <text>', 'how and when it was measured')
    .action(async (folder, texts, options) => (await import('./commands/change.js')).observeCommand(folder, texts, options, out));
  plantCommand(
    top,
    'solve',
    'What must this knob be for that result?',
    'solve examples/pellamoor --target caramel.water_activity=0.54 --knob caramel.cook_temperature',
  )
    .requiredOption('--target <id=value>', 'what is wanted')
    .requiredOption('--knob <id>', 'what may be turned')
    .option('--low <value>', 'lowest value of the knob; default: its window')
    .option('--high <value>', 'highest value of the knob')
    .action(async (folder, options) => (await import('./commands/solve.js')).solveCommand(folder, options, out));
  plantCommand(
    top,
    'vary',
    'What the scatter of the inputs does to a result, and which input does most of it',
    'vary examples/pellamoor --output bar.mass --samples 8192',
  )
    .option('--output <id>', 'result to look at; may be repeated', many)
    .option(
      '--input <id:sd>',
      'input that varies, with its standard deviation; may be repeated; default: every tolerance in the definition',
      many,
    )
    .option('--samples <n>', 'number of samples', '4096')
    .option('--seed <n>', 'seed of the scramble', '1')
    .action(async (folder, options) => (await import('./commands/vary.js')).varyCommand(folder, options, out));
  plantCommand(
    top,
    'map',
    'The window over two knobs in which all limits hold',
    'map examples/pellamoor --x "caramel.moisture:8 %:11 %" --y "nougat.moisture:8 %:10 %" --output step.caramel_nougat',
  )
    .requiredOption('--x <id:low:high[:steps]>', 'first knob')
    .requiredOption('--y <id:low:high[:steps]>', 'second knob')
    .option('--output <id>', 'quantity whose window must hold; may be repeated; default: every window that the knobs reach', many)
    .option('--within <id=low:high>', 'a limit to hold beside the windows, or in place of one; may be repeated', many)
    .action(async (folder, options) => (await import('./commands/map.js')).mapCommand(folder, options, out));
  plantCommand(
    top,
    'compare',
    'Two versions, two bars or a change, side by side',
    'compare examples/pellamoor --set material.cocoa_butter.price="14.3 EUR/kg"',
  )
    .option('--with <folder>', 'another plant folder')
    .option('--with-bar <name>', 'another bar')
    .action(async (folder, options) => (await import('./commands/change.js')).compareCommand(folder, options, out));
  plantCommand(
    top,
    'calibrate',
    'Fit the plant’s own constants to its logs, with confidence limits',
    'calibrate examples/pellamoor --parameter caramel.cook_model_offset:-5:5 --data cooks.csv',
  )
    .requiredOption('--parameter <id[:low:high]>', 'constant to fit; may be repeated', many)
    .requiredOption('--data <file>', 'CSV with a column for each quantity id; the columns named by --observed are fitted to')
    .option('--observed <id>', 'column that was measured and is to be met; may be repeated', many)
    .action(async (folder, options) => (await import('./commands/calibrate.js')).calibrateCommand(folder, options, out));
  plantCommand(
    top,
    'cook',
    'A batch that came out wet or dry, a log of cooks, or the cooks under another pressure',
    'cook examples/pellamoor --moisture "10.3 %" --temperature "117.7 °C" --refractometer "89.4 %"',
  )
    .argument('[log]', 'CSV or XLSX of cooks: what each reading says, and the corrections that the good ones teach')
    .option('--component <name>', 'which cook; default: the caramel')
    .option('--counts <file>', 'bars cut and packed, to name bars; default: flow_5min.csv beside the log')
    .option('--pallets <file>', 'pallets, to name them; default: pallets.csv beside the log')
    .option('--stops <file>', 'stops of the line; default: stops.csv beside the log')
    .option('--alone', 'look at no other log')
    .option('--moisture <share>', 'water by the laboratory')
    .option('--temperature <value>', 'end temperature as the probe showed it')
    .option('--refractometer <share>', 'reading of the refractometer')
    .option('--viscosity <value>', 'viscosity as it was laid')
    .option('--deposit <value>', 'temperature of that viscosity; default: the deposit temperature')
    .option('--altitude <height>', 'every open cook at this height, same moisture')
    .option('--pressure <value>', 'cooks under this absolute pressure, same moisture')
    .action(async (folder, log, options) => (await import('./commands/cook.js')).cookCommand(folder, log, options, out));
  plantCommand(
    top,
    'delivery',
    'A tanker of syrup that is not quite as ordered: act, or do nothing, with the proof',
    'delivery examples/pellamoor --material "glucose syrup 42 DE" --solids "79.8 %" --de 42.6',
  )
    .requiredOption('--material <name>', 'the syrup')
    .option('--solids <share>', 'dry solids as delivered')
    .option('--de <value>', 'dextrose equivalent as delivered')
    .option('--load <mass>', 'mass of the load, to count what is short')
    .action(async (folder, options) => (await import('./commands/delivery.js')).deliveryCommand(folder, options, out));
  plantCommand(
    top,
    'blend',
    'The cheapest blend that holds activity, viscosity, grain, fat and milk, and what each limit costs',
    'blend examples/pellamoor --also "glucose syrup 60 DE"',
  )
    .option('--component <name>', 'which cook; default: the caramel')
    .option('--also <material>', 'a material of the plant that may come in; may be repeated', many)
    .option('--hold <property=value>', 'a value or two ends (low:high) in place of the usual limit; may be repeated', many)
    .option('--least <material=share>', 'at least this share of the finished component; may be repeated', many)
    .option('--most <material=share>', 'at most this share; may be repeated', many)
    .action(async (folder, options) => (await import('./commands/blend.js')).blendCommand(folder, options, out));
  plantCommand(
    top,
    'slab',
    'The slab through its cooler: core and faces along the belt, and whether it can be slit',
    'slab examples/pellamoor --air "8 °C"',
  )
    .option('--air <temperature>', 'air of the cooler')
    .option('--rate <rate>', 'another line speed')
    .action(async (folder, options) => (await import('./commands/slab.js')).slabCommand(folder, options, out));
  plantCommand(
    top,
    'cooker',
    'Duty, steam, time and spread of the cookers, and what a wrong probe does',
    'cooker examples/tollhythe --probe "1 K"',
  )
    .argument('[log]', 'CSV or XLSX of cooks of one component: the scatter of its end temperatures')
    .option('--component <name>', 'which cook; default: all, with a log the caramel')
    .option('--probe <difference>', 'what the probe shows too much; default 1 K')
    .action(async (folder, log, options) => (await import('./commands/cooker.js')).cookerCommand(folder, log, options, out));
  plantCommand(
    top,
    'foam',
    'A whipped mass that came out light or dense, another whip, a weak albumen; or a log of whipped batches',
    'foam examples/pellamoor --density "0.965 g/cm³"',
  )
    .argument('[log]', 'CSV or XLSX of whipped batches: cause of each that is out, and what the good ones teach')
    .option('--component <name>', 'which whipped component; default: the first')
    .option('--density <value>', 'density by the cup')
    .option('--pressure <value>', 'absolute pressure in the whip')
    .option('--temperature <value>', 'temperature in the whip')
    .option('--power <share>', 'gas that the albumen holds, of what a good lot holds')
    .action(async (folder, log, options) => (await import('./commands/foam.js')).foamCommand(folder, log, options, out));
  plantCommand(top, 'speed', 'What breaks first at another line speed', 'speed examples/pellamoor --rate "1050 bars/min"')
    .requiredOption('--rate <rate>', 'bars a minute')
    .option('--margin <share>', 'share of each station that is kept free to catch up; default 5 %')
    .action(async (folder, options) => (await import('./commands/speed.js')).speedCommand(folder, options, out));
  plantCommand(
    top,
    'lot',
    'What a lot is worth, its grade, and what its results leave open',
    'lot examples/pellamoor --material "cocoa beans" --lot CB-2614',
  )
    .requiredOption('--lot <lot>', 'lot of the plan')
    .option('--material <name>', 'material, where several lots have that name')
    .option('--reference <lot>', 'another lot to compare with; default: the recipe as costed')
    .option('--sample <mass>', 'mass of the aflatoxin sample; default 20 kg')
    .option('--prior <share>', 'aflatoxin that such lots are believed to hold; default 1 µg/kg')
    .action(async (folder, options) => (await import('./commands/lot.js')).lotCommand(folder, options, out));
  plantCommand(
    top,
    'roast',
    'Whether a roast log proves the kill step, and which lines do not',
    'roast examples/pellamoor examples/pellamoor/days/2026-03-17/peanut_roast.csv --station "peanut roaster"',
  )
    .argument('<log>', 'CSV or XLSX of the roaster, headers with units')
    .option('--station <name>', 'which roaster, where the line has several')
    .option('--raw-moisture <share>', 'raw moisture of the product, where neither the log nor its lots tell')
    .option('--counts <file>', 'bars cut and packed, to name bars; default: flow_5min.csv beside the log')
    .option('--pallets <file>', 'pallets, to name them; default: pallets.csv beside the log')
    .option('--stops <file>', 'stops of the line; default: stops.csv beside the log')
    .option('--alone', 'look at no other log')
    .action(async (folder, log, options) => (await import('./commands/roast.js')).roastCommand(folder, log, options, out));
  plantCommand(
    top,
    'temper',
    'Why temper moved, which bars, how long is left; or the slope of one cooling curve',
    'temper examples/pellamoor examples/pellamoor/days/2026-03-17/temper.csv',
  )
    .argument('<log>', 'CSV or XLSX of temper tests, or of one cooling curve')
    .option('--tunnel <file>', 'log of the tunnel, to narrow the window; default: tunnel.csv beside the log')
    .option('--stops <file>', 'stops of the line; default: stops.csv beside the log')
    .option('--counts <file>', 'bars cut and packed; default: flow_5min.csv beside the log')
    .option('--pallets <file>', 'pallets, to name them; default: pallets.csv beside the log')
    .option('--alone', 'look at no other log')
    .option('--until <time>', 'as one stood there then: only tests up to this time, such as 13:30')
    .action(async (folder, log, options) => (await import('./commands/temper.js')).temperCommand(folder, log, options, out));
  plantCommand(
    top,
    'affected',
    'Which bars and pallets a window of the day touches: those touched for certain, and more to be safe',
    'affected examples/pellamoor examples/pellamoor/days/2026-03-17 --at enrober --from 13:05 --to 14:34',
  )
    .argument('<day>', 'folder of the day: counts, pallets and stops as CSV or XLSX')
    .option('--at <place>', 'slab, cutter, enrober, wrapper, or a place to which the line writes a transit')
    .option('--from <time>', 'start of the window there, such as 13:05')
    .option('--to <time>', 'its end')
    .option(
      '--window <place=from/to>',
      'the same in one word, enrober=13:05/14:34; may be repeated: bars of several are counted once',
      many,
    )
    .option('--good <place=from/to>', 'last good reading before and first good one after a window there; may be repeated', many)
    .option('--counts <file>', 'bars cut and packed; default: flow_5min.csv of the day, else the file whose headings say so')
    .option('--pallets <file>', 'pallets; default: pallets.csv')
    .option('--stops <file>', 'stops of the line; default: stops.csv')
    .action(async (folder, day, options) => (await import('./commands/affected.js')).affectedCommand(folder, day, options, out));
  plantCommand(
    top,
    'tunnel',
    'How a bar passes the tunnel: temperatures, crystals, heat, dew',
    'tunnel examples/pellamoor --rate "1050 bars/min"',
  )
    .option('--rate <rate>', 'another line speed')
    .option('--log <file>', 'CSV or XLSX of zones and exit temperatures: the offset it asks for')
    .action(async (folder, options) => (await import('./commands/tunnel.js')).tunnelCommand(folder, options, out));
  plantCommand(
    top,
    'viscosity',
    'The cheapest lawful way to a yield value; flow values of a viscometer table',
    'viscosity examples/pellamoor --measured "12 Pa" --yield "9 Pa"',
  )
    .option('--yield <value>', 'Casson yield value wanted')
    .option('--plastic <value>', 'plastic viscosity wanted; default: as it is')
    .option('--measured <value>', 'yield value as measured; default: that of the chain')
    .option('--measured-plastic <value>', 'plastic viscosity as measured')
    .option('--curve <file>', 'CSV or XLSX of shear rate and stress: Casson, Windhab, Herschel-Bulkley')
    .option('--component <name>', 'which chocolate; default: that of the coat')
    .action(async (folder, options) => (await import('./commands/viscosity.js')).viscosityCommand(folder, options, out));
  plantCommand(
    top,
    'enrober',
    'What-if at the enrober: coat, bar, money, tunnel, and the ways back',
    'enrober examples/pellamoor --yield "12 Pa" --plastic "2.3 Pa·s"',
  )
    .option('--yield <value>', 'Casson yield value')
    .option('--plastic <value>', 'plastic viscosity')
    .option('--blower <speed>', 'air of the blower')
    .option('--shaker <rate>', 'strokes of the mesh a minute')
    .action(async (folder, options) => (await import('./commands/enrober.js')).enroberCommand(folder, options, out));
  plantCommand(
    top,
    'law',
    'Names in law that a chocolate may carry: EU, Codex, US, with margins',
    'law examples/pellamoor --component "milk chocolate"',
  )
    .option('--component <name>', 'which chocolate; default: that of the coat')
    .action(async (folder, options) => (await import('./commands/law.js')).lawCommand(folder, options, out));
  plantCommand(top, 'quantities', 'The ids that the other commands take', 'quantities examples/pellamoor --like water')
    .option('--like <text>', 'only those with this in id or meaning')
    .action(async (folder, options) => (await import('./commands/quantities.js')).quantitiesCommand(folder, options, out));
  command(
    top,
    'model',
    'The one door to every published model',
    `model sucrose.boiling_point --in '{"solids": 0.8, "pressure_pa": 101325}' --json`,
  )
    .argument('[id]', 'id of a model')
    .option('--list', 'list every model with its inputs, ranges and sources')
    .option('--in <json>', 'inputs by key; keys carry the unit')
    .option('--batch <file>', 'many at once: one {"id":…,"in":{…}} a line; - for standard input')
    .option('--json', 'as JSON')
    .action(async (id, options) => (await import('./commands/model.js')).modelCommand(id, options, out));
  command(top, 'evidence', 'Every model against values from outside', 'evidence --model sucrose')
    .option('--json', 'as JSON')
    .option('--model <start>', 'only models whose id starts so')
    .option('--write <folder>', 'write the evidence pages')
    .action(async (options) => (await import('./commands/evidence.js')).evidenceCommand(options, out));
  command(top, 'serve', 'The screens, on this machine only', 'serve --port 4820')
    .option('--port <n>', 'port to try first', '4820')
    .option('--data <folder>', 'where the database is kept; default: the data folder of the user')
    .action(async (options) => (await import('./commands/serve.js')).serveCommand(options, out));
  return top;
}

function command(top: Command, name: string, summary: string, example: string): Command {
  return top.command(name).summary(summary).description(summary).exitOverride().addHelpText('after', `\nExample:\n  barwright ${example}`);
}

function plantCommand(top: Command, name: string, summary: string, example: string): Command {
  return command(top, name, summary, example)
    .argument('<plant-folder>', 'folder with the definition of the plant')
    .option('--bar <name>', 'which bar; default: that of the plan')
    .option('--set <id=value>', 'change a value first, as a what-if; may be repeated', many)
    .addOption(new Option('--units <system>', 'units to read').choices(['metric', 'us']).default('metric'))
    .option('--json', 'as JSON');
}
