import type { Source } from '../source.js';

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
  'at-food-book-b15': {
    title: 'Austrian food book, chapter B 15, milk chocolate; and a summary of Directive 2000/36/EC, of 2024',
    address: 'https://mxnsbluepaper.com/cocoa-and-cocoa-products/',
  },
  'codex-87-1981': {
    title: 'Codex Alimentarius, Standard for chocolate and chocolate products, CODEX STAN 87-1981, Rev. 1-2003',
    address: 'http://files.foodmate.com/2013/files_1187.html',
  },
  'us-21cfr163': {
    title: '21 CFR 163 Cacao products',
    address: 'https://www.accessdata.fda.gov/scripts/cdrh/cfdocs/cfcfr/CFRSearch.cfm?fr=163.130',
  },
  'hundy-refrigeration': {
    title: 'G. F. Hundy, A. R. Trott, T. C. Welch, Refrigeration and Air-Conditioning, ch. 21, example 21.3 (companion notebook)',
  },
  'chocolate-storage-page': { title: 'University food information page on the storage of chocolate: room, humidity, condensation' },
  'casson-1959': { title: 'N. Casson, in C. C. Mill (ed.), Rheology of Disperse Systems (1959), p. 84' },
  'casson-glossary': {
    title: 'Casson analysis of a milk and a dark chocolate, glossary of an instrument maker',
    address: 'https://analyzing-testing.netzsch.com/en-US/know-how/glossary/casson-analysis',
  },
  'chocolate-1973-method-note': {
    title: 'Application note: milk chocolate measured by the method of 1973, 5 to 50 1/s at 40 °C',
    address: 'https://www.meritics.com/rm200-plus-melted-chocolate-application-note/',
  },
  'aeschlimann-beckett-2000': {
    title:
      'J. M. Aeschlimann, S. T. Beckett, International inter-laboratory trials on chocolate viscosity, J. Texture Stud. 31 (2000), abstract',
    address: 'https://zendy.io/title/10.1111/j.1745-4603.2000.tb01019.x',
  },
  'servais-2004': {
    title: 'C. Servais, H. Ranc, I. D. Roberts, Determination of chocolate viscosity, J. Texture Stud. 34 (2004), abstract',
    address: 'https://paperexplained.cn/articles/paper/detail/b4a9882bddfa4fc91236fc0140f3128e12c8e8a0',
  },
  'de-graef-2011': {
    title: 'V. De Graef et al., Chocolate yield stress as measured by oscillatory rheology, Food Res. Int. 44 (2011) 2660, abstract',
    address: 'https://www.scribd.com/document/444705046/chocolate-yield-stres-pdf',
  },
  'bergemann-2018': {
    title:
      'N. Bergemann, M. Heil, B. Smith, A. Juel, From elastic deformation to flow in tempered chocolate, J. Rheol. 62 (2018) 1187, abstract',
    address: 'https://lausr.org/dashboard/?doi=10.1122%2F1.5038253',
  },
  'ica-46-2000': {
    title: 'International Confectionery Association, Analytical Method 46 (2000): Viscosity of cocoa and chocolate products',
  },
  'steffe-1996': { title: 'J. F. Steffe, Rheological Methods in Food Process Engineering, 2nd ed. (1996)' },
  'krieger-dougherty-1959': { title: 'I. M. Krieger, T. J. Dougherty, Trans. Soc. Rheol. 3 (1959) 137' },
  'chocolate-flow-trends': {
    title: 'Sizes of fat, lecithin, E476, water and fineness effects on chocolate flow: handbook figures and common practice',
  },
  'afoakwa-2008': {
    title:
      'E. O. Afoakwa, A. Paterson, M. Fowler, J. Vieira, particle size and composition of dark chocolate, Eur. Food Res. Technol. 226 and J. Food Eng. 87 (2008), abstracts',
    address: 'https://pureportal.strath.ac.uk/en/publications/effects-of-particle-size-distribution-and-composition-on-rheologi',
  },
  'schantz-rohm-2005': {
    title: 'B. Schantz, H. Rohm, Influence of lecithin-PGPR blends on chocolate rheology, LWT 38 (2005) 41, abstract',
  },
  'pombal-2024': { title: 'M. Pombal, I. Marcet, M. Rendueles, M. Diaz, emulsifiers in chocolate, Molecules 29 (2024) 5185, abstract' },
  'water-fat-rule': { title: 'Web article on water in chocolate repeating the textbook rule: 0.3 % water asks for 1 % fat' },
  'lecithin-butter-rule': {
    title: 'Book excerpt: one part of lecithin replaces about ten parts of cocoa butter',
    address: 'https://issuhub.com/view/index/3963?pageIndex=2641',
  },
  'eu-1333-2008': { title: 'Regulation (EC) No 1333/2008 on food additives, Annex II (E476 in cocoa-based confectionery)' },
  'nozzle-trade-article': { title: 'Trade article: Casson yield value of a chocolate at 40 °C against the head at a depositor nozzle' },
  'geankoplis-transport': {
    title:
      'C. J. Geankoplis, Transport Processes and Unit Operations: worked examples of flow, films, convection and humidity (companion notebooks)',
    address: 'https://github.com/FOSSEE/Python-Textbook-Companions',
  },
  'cocoa-butter-sfc': { title: 'Solid fat content of tempered cocoa butter by pulsed NMR, by origin: tables of the trade literature' },
  'wille-lutton-1966': {
    title: 'R. L. Wille, E. S. Lutton, Polymorphism of cocoa butter, JAOCS 43 (1966) 491, as quoted in an encyclopaedia',
    address: 'https://exq.pages.dev/Cocoa_butter',
  },
  'beckett-constants-2009': {
    title: 'Industrial Chocolate Manufacture and Use, 4th ed. (2009), Useful Physical Constants, pp. 667-668',
    address: 'https://scribd.com/document/443808961/CHOCOLATE-USEFUL-PHYSICAL-CONSTANTS',
  },
  'nmr-sfc-method': {
    title: 'Indirect pulsed NMR method for the solid fat of cocoa butter (formula)',
    address: 'https://www.nmranalyzer.com/gutizhifanghanliangsfcceliangshishipingongyezhongpubianxuyaojinxingdebuzhougutizhifanghanlianga',
  },
  'chocolate-density-page': { title: 'Study page quoting Beckett 1999 and Meursing 1983: densities of chocolate and cocoa butter' },
  'foubert-2002': {
    title:
      'I. Foubert, P. A. Vanrolleghem, B. Vanhoutte, K. Dewettinck, Dynamic mathematical model of the crystallization kinetics of fats, Food Res. Int. 35 (2002) 945',
    address: 'https://scribd.com/document/693273890/1-s2-0-S0963996902001576-main',
  },
  'avrami-1940': { title: 'M. Avrami, Kinetics of phase change II, J. Chem. Phys. 8 (1940) 212' },
  'franke-1998': {
    title:
      'K. Franke, Modelling the cooling kinetics of chocolate coatings with respect to final product quality, J. Food Eng. 36 (1998) 371',
    address: 'https://www.scribd.com/document/472482419/Franke-1998-pdf',
  },
  'davis-dimick-1989': {
    title:
      'T. R. Davis, P. S. Dimick, Isolation and thermal characterization of high-melting seed crystals of cocoa butter, J. Am. Oil Chem. Soc. 66 (1989) 1488',
  },
  'casson-analysis-page': { title: 'Glossary page of an instrument maker: Casson analysis of a milk and a dark chocolate' },
  'chocolate-flow-texts': { title: 'Texts on chocolate flow: effects of fat, lecithin and E476 on the Casson values, usual figures' },
  'milk-fat-sfc': { title: 'Solid fat content of anhydrous milk fat by pulsed NMR: usual figures of dairy texts' },
  'clegg-2001': {
    title:
      'S. M. Clegg, Thermal conductivity of chocolate, Leatherhead Scientific and Technical Note 203 (2001), as quoted in Useful Physical Constants',
    address: 'https://scribd.com/document/443808961/CHOCOLATE-USEFUL-PHYSICAL-CONSTANTS',
  },
  'temper-slope': {
    title: 'Practitioner page and meter manual: slope at the inflection of the temper curve (near 0 well, positive under, negative over)',
  },
  'fieller-1954': { title: 'E. C. Fieller, Some problems in interval estimation, J. R. Stat. Soc. B 16 (1954) 175' },
  'plane-films': {
    title: 'Plane film of a viscous or plastic fluid under gravity: kinematic drainage (Jeffreys 1930), force balance at rest',
  },
  'wichchukit-2005': {
    title:
      'S. Wichchukit, M. J. McCarthy, K. L. McCarthy, Flow behavior of milk chocolate melt and the application to coating flow, J. Food Sci. 70 (2005), abstract',
    address: 'https://de.scribd.com/document/141345678/Flow-Behavior-of-Milk-Chocolate',
  },
  'jet-wiping': {
    title: 'J. A. Thornton, H. F. Graff, An analytical description of the jet finishing process, Metall. Trans. B 7 (1976) 607',
  },
  'liu-mei-1989': {
    title: 'K. F. Liu, C. C. Mei, Slow spreading of a sheet of Bingham fluid on an inclined plane, J. Fluid Mech. 207 (1989) 505',
  },
  'covey-stanmore-1981': {
    title: 'G. H. Covey, B. R. Stanmore, Use of the parallel-plate plastometer, J. Non-Newtonian Fluid Mech. 8 (1981) 249',
  },
  'papageorgiou-1995': { title: 'D. T. Papageorgiou, On the breakup of viscous liquid threads, Phys. Fluids 7 (1995) 1529' },
  'lee-2016': {
    title:
      'A. Lee, P.-T. Brun, J. Marthelot, G. Balestra, F. Gallaire, P. M. Reis, Fabrication of slender elastic shells by the coating of curved surfaces, Nat. Commun. 7 (2016) 11155, press text',
    address: 'https://materialdistrict.com/article/learning-chocolate-coatings-predict-thickness-shell-structures/',
  },
  'curtain-weber': { title: 'Coating page: a curtain with a Weber number below 2 is probably unstable' },
  'enrober-practice': { title: 'Enrobing and cooling: figures of common practice, no source' },
  'mccarthy-2008': {
    title: 'K. L. McCarthy, M. J. McCarthy, Oil migration in chocolate-peanut butter paste confectionery, J. Food Sci. 73 (2008), abstract',
  },
  'crank-1975': { title: 'J. Crank, The Mathematics of Diffusion, 2nd ed. (1975)' },
  'rsc-2016-shear': {
    title: 'Oil diffusion in sheared cocoa butter matrices, RSC Advances (2016) c6ra11196c, abstract',
    address: 'https://rsc.66557.net/en/content/articlelanding/2016/ra/c6ra11196c',
  },
  'bougatsos-storage': {
    title: 'Storage table of a refrigeration contractor: chocolate and candies',
    address: 'http://www.bougatsos.com/en/main/sectors/food-industry/chocolate-and-candies.html',
  },
  'conche-practice': { title: 'Conching of milk and dark masses: rates of drying and loss of acid, power, common practice' },
  'yaliniz-tekin-2017': {
    title: 'F. Yaliniz, A. Tekin, conching of dark chocolate, JASFT 3 (2017) 64, abstract',
    address: 'http://pearlresearchjournals.org/journals/jasft/archive/2017/July/Abstract/Fatima%20and%20Ali.html',
  },
  'conche-encyclopaedia': {
    title: 'Encyclopaedia article on conching citing Afoakwa 2010: 49 °C (milk) to 82 °C (dark)',
    address: 'https://zalansite.site/mediawiki/index.php?action=edit&section=2&title=Conching',
  },
  'cooling-time-page': {
    title: 'FoodReview Indonesia (2017) citing Sundara 2014: time in the cooling tunnel',
    address: 'https://foodreview.co.id/blog-5669305-Metode-Pendinginan-pada-Proses-Enrobing.html',
  },
} as const satisfies Record<string, Source>;
