import type { Source } from '../sources.js';

/** Works behind the cocoa models. */
export const cocoaSources = {
  'eu-1169-2011': {
    title: 'Regulation (EU) No 1169/2011 on food information to consumers, Annexes I and XIV',
    address: 'https://vethyqua.scenari.eu/clients/ReglementationHygiene-HACCP_DcoD/co/09-14-Anx14.html',
  },
  'eu-tolerance-guidance-2012': {
    title: 'European Commission, Guidance document on tolerances for nutrient values declared on a label (December 2012)',
    address: 'https://www.hellaschem.gr/en/news-publications/241-food-labeling-the-dietary-declaration-table',
  },
  'us-21cfr101-9': {
    title: '21 CFR 101.9 Nutrition labeling of food; FDA Food Labeling Guide, appendix H',
    address:
      'http://www.fda.gov/Food/GuidanceComplianceRegulatoryInformation/GuidanceDocuments/FoodLabelingNutrition/FoodLabelingGuide/ucm064932.htm',
  },
  'usda-sr28': { title: 'USDA National Nutrient Database for Standard Reference, release 28 (2016), abbreviated file' },
  'eu-2000-36': {
    title: 'Directive 2000/36/EC relating to cocoa and chocolate products, consolidated 18.11.2013',
    address: 'https://legislation.gov.uk/eudr/2000/36/annex/I/division/A/division/5?view=plain',
  },
  'at-chocolate-ordinance': {
    title: 'Austrian chocolate ordinance, section 5 (implements Directive 2000/36/EC)',
    address: 'https://gesetzefinden.at/bundesrecht/verordnungen/20003127/para-5',
  },
  'codex-87-1981': {
    title: 'Codex Alimentarius, Standard for chocolate and chocolate products, CODEX STAN 87-1981, Rev. 1-2003',
    address: 'http://files.foodmate.com/2013/files_1187.html',
  },
  'us-21cfr163': {
    title: '21 CFR 163 Cacao products',
    address: 'https://www.accessdata.fda.gov/scripts/cdrh/cfdocs/cfcfr/CFRSearch.cfm?fr=163.130',
  },
} as const satisfies Record<string, Source>;
