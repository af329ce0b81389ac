/**
 * What stands in nearly every plan's file, as it is packed: a code on paper need not carry it (RFC 1950 calls it a preset dictionary). What is met
 * most often stands last. Codes that are printed hang on every letter of it: it is never changed; another one needs another mark.
 */
const TEXT =
  '"endElevationsM":["sagPct":"slackPct":"over":"phantom","pairsOf":{"electrodeOhms":"worn":true,"return":"earth","loadingDistrict":"' +
  '"}},"supply":{"type":"two-9-volt-led","at":"board-4-keys-drops","at":"ringdown-24","at":"feed-48","at":"copper-24","wire":"copper-22","wire":"network-cca-24"' +
  '{"type":"FeatureCollection","plan":{"format":"fieldpair-plan","version":1,"title":", line ","note":"","weather":"wet","wireTempC":"weather":"dry","wireTempC":20,' +
  '"allowances":{"slackPct":{"surface":20,"overhead":3,"buried":5,"water":15},"sagPct":2,"tailM":8,"spliceWasteM":0.5,"reservePct":10},' +
  '"catalog":{"wires":[],"sets":[],"supplies":[]},"circuits":[{"id":"","name":"","lines":["","sets":{"":"common-1-ren","":"crank-1600"},"supply":null},{"id":"' +
  '"supply":null}],"stock":[]},"features":[{"type":"Feature","id":"","properties":{"kind":"station","name":"","note":""},"geometry":{"type":"Point","coordinates":[' +
  ']}},{"type":"Feature","id":"","properties":{"kind":"hazard","hazard":"","name":""},"geometry":{"type":"Polygon","coordinates":[[[' +
  '"legs":[{"lay":"water"},{"lay":"buried","note":"","lay":"overhead"},{"lay":"surface"},{"lay":"surface"}]},"geometry":{"type":"LineString","coordinates":[[' +
  ']]}},{"type":"Feature","id":"","properties":{"kind":"line","from":"","to":"","wire":"wd-1a","pairs":1,"return":"pair","legs":[{"lay":"surface"}]},"geometry":{"type":"LineString","coordinates":[['

export const WORDS_OF_PLANS: Uint8Array = new TextEncoder().encode(TEXT)
