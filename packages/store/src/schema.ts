import type { Generated } from 'kysely';

/** A plant by its key in addresses and files: 'pellamoor'. Its name belongs to each version, since a plant may be renamed. */
interface PlantTable {
  id: string;
  /** ISO 8601, UTC. */
  created_at: string;
}

/** One saved state of a plant's definition files. Only ever added to. */
interface DefinitionVersionTable {
  /** Without gaps over all plants, so that a version missing at the end of a history shows. */
  id: Generated<number>;
  plant_id: string;
  /** 1, 2, 3 … within the plant. */
  number: number;
  /** The version it was made from; null for the first. */
  parent_id: number | null;
  plant_name: string;
  created_at: string;
  author: string;
  reason: string;
  content_sha256: string;
  /** `sha256` of the parent; null for the first. */
  predecessor_sha256: string | null;
  /** Over all of the above except the ids, see `hash.ts`. */
  sha256: string;
}

interface DefinitionFileTable {
  version_id: number;
  path: string;
  text_sha256: string;
}

/** A text is stored once however many versions hold it. */
interface DefinitionTextTable {
  sha256: string;
  text: string;
}

export interface Schema {
  plant: PlantTable;
  definition_version: DefinitionVersionTable;
  definition_file: DefinitionFileTable;
  definition_text: DefinitionTextTable;
}
