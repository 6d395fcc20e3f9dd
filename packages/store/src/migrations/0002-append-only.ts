import { sql, type Kysely, type Migration } from 'kysely';

const tables = ['plant', 'definition_version', 'definition_text', 'definition_file'];

/** History is only added to: each table refuses to change or lose a row, and a version must follow the latest one. */
export const appendOnly: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const table of tables) {
      for (const action of ['update', 'delete']) {
        const sentence = `APPEND_ONLY: no ${action} of ${table}; add a new version instead`;
        await sql`create trigger ${sql.ref(`${table}_no_${action}`)} before ${sql.raw(action)} on ${sql.table(table)}
          begin select raise(abort, ${sql.lit(sentence)}); end`.execute(db);
      }
    }
    await sql`create trigger definition_version_follows before insert on definition_version
      when new.number <> 1 + (select coalesce(max(number), 0) from definition_version where plant_id = new.plant_id)
        or new.predecessor_sha256 is not (select sha256 from definition_version where plant_id = new.plant_id and number = new.number - 1)
      begin select raise(abort, 'APPEND_ONLY: a version follows the latest one of its plant'); end`.execute(db);
  },
};
