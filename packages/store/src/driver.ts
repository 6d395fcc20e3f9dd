import Database from 'libsql';
import {
  CompiledQuery,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type Driver,
  type SqliteDatabase,
  type SqliteDialectConfig,
  type SqliteStatement,
} from 'kysely';
import { storeErrorFrom } from './errors.js';

/** Milliseconds that a statement waits for another program's write to end. */
const patience = 5_000;

/**
 * The seam to the embedded database: another driver of the same kind replaces these lines and nothing else.
 * @throws StoreError STORE_UNUSABLE or STORE_BUSY
 */
export function openDatabase(file: string): SqliteDatabase {
  const say = <T>(work: () => T): T => {
    try {
      return work();
    } catch (error) {
      throw storeErrorFrom(error, file);
    }
  };
  const raw = say(() => new Database(file));
  try {
    const pragma = (words: string): void => void say(() => raw.prepare(`pragma ${words}`).all());
    pragma(`busy_timeout = ${patience}`);
    say(() => writeAheadLog(raw));
    // Full: the log reaches the disk before a commit returns, so what was acknowledged outlives a killed program and a power cut.
    pragma('synchronous = full');
    pragma('foreign_keys = on');
    // Without it 'insert or replace' would delete a row past the triggers that forbid deleting.
    pragma('recursive_triggers = on');
  } catch (error) {
    raw.close();
    throw error;
  }
  return {
    close: () => void raw.close(),
    prepare: (sql) => {
      if (transactionWords.includes(sql)) return wholeStatement(() => say(() => raw.exec(sql)));
      const statement = say(() => raw.prepare(sql));
      return {
        reader: statement.reader,
        all: (values) => say(() => statement.all(values)),
        run: (values) => say(() => statement.run(values)),
        iterate: (values) => statement.iterate(values),
      };
    },
  };
}

/**
 * A prepared statement that fails because another program writes stays open in this driver, and the connection could not
 * commit any more. These words, the only ones that wait for the lock, therefore go to the database unprepared.
 */
const transactionWords = ['begin immediate', 'commit', 'rollback'];

function wholeStatement(run: () => void): SqliteStatement {
  const nothing = { changes: 0, lastInsertRowid: 0 };
  return { reader: false, run: () => (run(), nothing), all: () => (run(), []), iterate: () => [][Symbol.iterator]() };
}

/** Switching to the log needs the file alone for an instant and does not wait by itself; two programs may start together. */
function writeAheadLog(raw: Database.Database): void {
  const until = Date.now() + patience;
  for (;;) {
    try {
      raw.prepare('pragma journal_mode = wal').all();
      return;
    } catch (error) {
      if ((error as { code?: string }).code !== 'SQLITE_BUSY' || Date.now() > until) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5 + Math.random() * 20);
    }
  }
}

/** Takes the write lock when a transaction begins: one that reads first and writes later would be refused half-way. */
class WritingDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

/** Tables are created inside transactions here, so a migration happens wholly or not at all, and once. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

/** SQL of the embedded database, with the two changes above. */
export class EmbeddedDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;
  constructor(config: SqliteDialectConfig) {
    super(config);
    this.#config = config;
  }
  override createDriver(): Driver {
    return new WritingDriver(this.#config);
  }
  override createAdapter(): SqliteAdapter {
    return new TransactionalAdapter();
  }
}
