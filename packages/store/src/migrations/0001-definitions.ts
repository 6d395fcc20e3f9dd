import { sql, type Kysely, type Migration } from 'kysely';

/** Plants and their versioned definition files. */
export const definitions: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`create table plant (
      id         text primary key check (length(id) between 1 and 64),
      created_at text not null
    ) strict`.execute(db);
    await sql`create table definition_version (
      id                 integer primary key autoincrement,
      plant_id           text    not null references plant (id),
      number             integer not null check (number >= 1),
      parent_id          integer references definition_version (id),
      plant_name         text    not null,
      created_at         text    not null,
      author             text    not null check (length(author) >= 1),
      reason             text    not null check (length(reason) >= 1),
      content_sha256     text    not null check (length(content_sha256) = 64),
      predecessor_sha256 text    check (length(predecessor_sha256) = 64),
      sha256             text    not null unique check (length(sha256) = 64),
      unique (plant_id, number),
      check ((number = 1) = (parent_id is null)),
      check ((number = 1) = (predecessor_sha256 is null))
    ) strict`.execute(db);
    await sql`create table definition_text (
      sha256 text primary key check (length(sha256) = 64),
      text   text not null
    ) strict, without rowid`.execute(db);
    await sql`create table definition_file (
      version_id  integer not null references definition_version (id),
      path        text    not null,
      text_sha256 text    not null references definition_text (sha256),
      primary key (version_id, path)
    ) strict, without rowid`.execute(db);
  },
};
