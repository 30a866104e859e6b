/** What a word in a value column says. `cooling` is off where the same column also knows defrost, else on. */
export type WordMeaning = 'on' | 'off' | 'cooling' | 'defrost' | 'missing' | 'fault';

const vocabulary: { readonly [meaning in WordMeaning]: string } = {
  on:
    'on|open|opened|run|running|active|activated|true|yes|y|enable|enabled|energized|energised|start|started|high|heat|heating|' +
    'alarm|in alarm|trip|tripped|occupied|ein|an|auf|offen|geöffnet|geoeffnet|aktiv|läuft|ja|wahr|marche|ouvert|ouverte|actif|' +
    'oui|vrai|acceso|aperto|attivo|sì|vero|encendido|abierto|activo|si|sí|verdadero|aan|waar|på|til|till|ligado|aberto|sim|t|запущен|' +
    'accesa|aperta|attiva|vera|encendida|abierta|activa|marcha|en marcha|ligada|aberta|geopend|actief|bezig|öppen|öppet|aktiverad|' +
    'åben|tændt|åpen|päällä|auki|wł|włączony|załączony|otwarty|zap|zapnuto|otevřeno|otevřen|eingeschaltet|in betrieb|en service|allumé',
  off:
    'off|closed|close|shut|stop|stopped|inactive|false|no|n|disable|disabled|de-energized|deenergized|idle|standby|stand-by|low|' +
    'normal|ok|clear|unoccupied|satisfied|aus|zu|geschlossen|inaktiv|steht|nein|falsch|arrêt|arret|fermé|ferme|fermée|inactif|non|faux|' +
    'spento|chiuso|inattivo|falso|apagado|cerrado|inactivo|uit|dicht|nee|av|fra|desligado|fechado|não|f|' +
    'spenta|chiusa|inattiva|falsa|apagada|cerrada|inactiva|paro|parado|detenido|desligada|fechada|parada|gesloten|inactief|' +
    'stängd|stängt|från|avstängd|lukket|slukket|stengt|pois|kiinni|seis|wył|wyłączony|zamknięty|vyp|vypnuto|zavřeno|zavřen|' +
    'ausgeschaltet|ruhe|hors service|éteint|à l’arrêt',
  cooling:
    'cool|cooling|calling|pulldown|pull down|pull-down|refrig|refrigerate|refrigerating|refrigeration|refr|kühlen|kühlung|kuehlen|froid|refroidissement|raffreddamento|' +
    'freddo|frío|frio|koelen|koeling',
  defrost:
    'def|dfr|dfrst|defr|defrost|defrosting|in defrost|defrost on|abtauen|abtauung|dégivrage|degivrage|sbrinamento|' +
    'desescarche|descongelación|ontdooien|afrimning|avfrostning|drip|dripping|drip time|drain|fan delay|abtropfen',
  missing:
    'n/a|na|n.a.|#n/a|nan|-nan|null|(null)|none|nil|missing|no data|nodata|no value|no reading|void|blank|empty|undefined|n/d|n.d.|#n/d|#nv|#nd|#n/a n/a|unknown|' +
    'not available|unavailable|not used|unused|spare|k.a.|k. a.|s/d|sin datos|manquant|fehlt|leer|tbd|x|xx|xxx|<no data>|---.-|--.-|-.-|inf|-inf|+inf|infinity|-infinity',
  fault:
    'bad|fail|failed|failure|fault|faulty|faulted|error|err|invalid|uncertain|offline|off-line|off line|down|comm fail|comm failure|' +
    'comm loss|comm error|no comm|lost|timeout|time out|sensor fail|sensor failure|sensor fault|sensor error|probe fail|probe fault|' +
    'short|shorted|short circuit|open circuit|opencircuit|o/c|s/c|disconnected|not connected|underrange|overrange|under range|' +
    'over range|over|under|overflow|underflow|out of range|fehler|störung|ausfall|fühlerbruch|kurzschluss|erreur|défaut|panne|' +
    'errore|guasto|fallo|avería|#value!|#ref!|#div/0!|#num!|#name?|#null!|#error|1.#inf|-1.#inf|1.#ind|-1.#ind|1.#qnan|nok|' +
    'ol|o.l.|-ol|opn|opn.|sht|shrt|srt|n.c.|nc|uuuu|oooo|llll|hhhh|burnout|burn-out|probe open|probe short|open probe|shorted probe|#wert!|#valeur!|#valor!|#bezug!',
};

const meanings = new Map<string, WordMeaning>();
for (const [meaning, words] of Object.entries(vocabulary)) {
  for (const word of words.split('|')) meanings.set(word, meaning as WordMeaning);
}

/** What `text` (already trimmed) says as a word, or null where it is no word that the trade uses. */
export function wordMeaning(text: string): WordMeaning | null {
  if (text.length > 24) return null;
  const known = meanings.get(text.toLowerCase());
  if (known !== undefined) return known;
  if (/^[-–—_.?*~=#/]+$/u.test(text) || text === '\\N') return 'missing';
  // Beyond the scale of the probe: `>302`, `< -58`.
  if (/^[<>≤≥]\s?[-+]?\d+(?:[.,]\d+)?$/u.test(text)) return 'fault';
  // `ON (1)`, `0 - Closed`, `2: Defrost`: the word counts.
  const word = /^(?:\d{1,2}\s?[-=:]\s?)?(\p{L}+)(?:\s?\([01]\))?$/u.exec(text)?.[1];
  if (word !== undefined && word !== text) return meanings.get(word.toLowerCase()) ?? null;
  return null;
}

/**
 * Whether a word of a quality column says that the value may be used; null for a word that says neither. Where
 * `counted` the column has the quality numbers of OPC (192 and above good, below uncertain or bad); elsewhere a
 * 0 is an error code of none.
 */
export function qualitySaysGood(text: string, counted = false): boolean | null {
  if (counted && /^\d{1,3}$/u.test(text)) return Number(text) >= 192;
  const word = text
    .toLowerCase()
    .replace(/[{}[\]()]/gu, '')
    .trim();
  if (/^(?:good|ok|okay|valid|normal|true|1|192|0|a|gut|gültig|bon|buono|bueno|)$/u.test(word)) return true;
  if (
    /^(?:bad|invalid|fail|failed|fault|error|false|stale|uncertain|questionable|suspect|down|offline|schlecht|ungültig|mauvais|-1)\b/u.test(
      word,
    )
  ) {
    return false;
  }
  return null;
}
