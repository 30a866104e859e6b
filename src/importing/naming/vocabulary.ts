/**
 * What a word in a column name can mean. Trade words and their usual short forms, the words of the open
 * vocabularies (Project Haystack 4, Brick 1.4: supply, discharge, return, sensor, setpoint …), and the same in
 * German, French, Spanish, Italian, Portuguese, Dutch and Swedish. Lower case, accents removed.
 */
export const meanings = {
  temperature:
    'temp temps temperature temperatures tmp tmpr temperatur temperatura temperaturen temperatuur tt te',
  pressure:
    'press pressure pressures pres prs prss druck pression presion pressao pressione druk psi psig psia kpa mpa',
  air: 'air luft aire aria lucht',
  probe:
    'probe probes sensor sensors snsr sns sens fuhler fuehler sonde sonda sondas capteur sensore ntc thermistor thermostat voeler voler prb tc rtd givare',
  discharge:
    'discharge disch dischg dschg dsch dis dischrg dca dat refoulement descarga mandata pers disc dschrg',
  supply:
    'supply sup sply supp zuluft ausblas ausblasluft soufflage impulsion inblaas entry saf souf soufl uitblaas uitblaaslucht tilluft delivery souffle insuflacao impulsao insufflation',
  return:
    'return ret rtn retn rat raf ruckluft rueckluft ansaug ansaugluft reprise retorno ritorno retour ripresa aanzuig rep zuigluft returluft franluft abluft repris retur retrn',
  set: 'set setpoint setpoints setpt stpt setp stp sp spt tgt target cutin cutout soll sollwert consigne consigna setpunt riferimento reference ajuste gewenste gewenst cons borvarde setting settings csp wanted desired stpnt setpnt ingesteld ingestelde instelwaarde instelling',
  differential:
    'differential diff deadband dband db hyst hysteresis hysterese differentiel diferencial differenziale schaltdifferenz',
  defrost:
    'defrost defrosts defrosting dfr dfrst dfst defr def dfro defrst abtau abtauung abtauen abt degivrage degiv deg desescarche descongelacion degelo sbrinamento sbrin ontdooi ontdooiing deshielo dfst ontdooien avfrostning avfrostnings dfrost abtauende descongelacao descongelamento desesc degivrages',
  termination: 'termination term termin terminate trm dtt terminator',
  valve:
    'valve vlv valv solenoid sol solen eev exv eexv txv tev ventil ventiloffnung ventiloeffnung ventilstellung offnungsgrad oeffnungsgrad vanne valvula valvola klep lls llsv svl epr esr stepper magnetventil electrovanne solenoide elettrovalvola ssv llv mop xv ev opening ouverture apertura abertura openingsgraad detendeur klepstand klepopening kleppositie magneetklep ventillage lsv lsol lqsol llsol expansion electrovalvula',
  feed: 'feed feeding cool cooling refrig refrigeration call calling kuhlung kuhlen kuehlung froid frio freddo koeling koelen kalte clg refrigerating koelvraag kalteanforderung kaelteanforderung raffreddamento refrigeracion',
  liquid: 'liquid liq flussig flussigkeit fluessig liquide liquido vloeistof lq',
  suction:
    'suction suct suc sction saug aspiration aspiracion aspirazione succion zuig evaporating lowside succao suctp sucp psuct verdampfungs bp lp nd niederdruck sugtryck niederdruckseite asp verdampfung',
  highSide:
    'head condensing highside hochdruck hd hdp verflussigung condensacion condensation verflussigungs verfluessigungs kondensation kondensations hp hogtryck kondensering condensazione condensacao druckgas hogedruk hoogdruk verfl condensatie',
  condenser:
    'condenser cond cndsr cndr condensor verflussiger condenseur condensador condensatore gascooler gc',
  compressor:
    'compressor compressors machine machines comp comps compr cmp cmpr cprsr kompressor verdichter compresseur compresor compressore kompr verd vdc vd',
  level: 'level lvl niveau nivel livello fullstand fuellstand peil vatskeniva',
  receiver: 'receiver rcvr recvr rcv sammler recipient recipiente reservoir',
  superheat:
    'superheat sheat suph suphtr spht suphheat sh uberhitzung ueberhitzung surchauffe recalentamiento surriscaldamento oververhitting sobreaquecimento sobrecalentamiento',
  subcooling: 'subcooling subcool sc unterkuhlung',
  coil: 'coil evap evaporator verdampfer evaporateur evaporador evaporatore verdamper batterie',
  outlet: 'out outlet leaving lvg exit austritt sortie salida uscita uit saida uitgang',
  inlet: 'in inlet entering entg eintritt entree entrada ingresso ingreso ingang',
  product: 'product products prod prd simulator sim simulated food produkt produit producto prodotto',
  outdoor:
    'outdoor outside oat oa oad amb ambient exterior aussen exterieur exterieure extern externe esterna buiten weather ute',
  indoor:
    'indoor indoors store space sales shop salesfloor raum markt ambiance magasin vente sala ventas tienda verkaufsraum verkaufsflache vendita winkel butik',
  humidity:
    'humidity humid rh hum hygro hygrometer moisture feuchte luftfeuchte humidite humedad umidita vocht dewpoint dew wetbulb fukt',
  fan: 'fan fans lufter luefter ventilator ventilateur ventilador ventola ventole ventiladores ventilateurs ventilatoren evfan efan cfan condfan',
  light:
    'light lights lighting licht eclairage luz lamp lites verlichting luces luci iluminacion lts ltg beleuchtung',
  door: 'door doors tur tuer porte puerta porta deur',
  instrument:
    'voltage volt volts battery batt rssi signal acceleration accel counter sequence lux ppm co2 leak noise uptime firmware',
  alarm: 'alarm alarms alm error err fault faults warn warning storung defaut alarma',
  limit: 'limit limits lim hilim lolim',
  heater: 'heater heaters htr antisweat sweat heizung ash asw',
  average: 'average avg ave avrg mean mittel mittelwert moyenne media promedio gemiddelde avr',
  control: 'control ctrl ctl controlling regel regelung regulation controle',
  extreme: 'min max minimum maximum minimal maximal warmest coldest highest lowest spread',
  power: 'power kw kwh amps amp current watts watt leistung puissance energy',
  speed: 'speed vfd vsd freq frequency hz inverter drehzahl vitesse capacity varvtal',
  oil: 'oil ol huile water wasser glycol brine floor flr drain motor heat reclaim',
  saturated: 'sst sct saturated satsuct ssct tsat',
  gas: 'gas hotgas gaz heissgas',
  status:
    'status sts stat stato state run running runs proof cmd command relay output on off onoff enable enabled active act value val pv actual ist point reading log output mode cycle zyklus ciclo stage flag betrieb',
  rack: 'rack racks pack plant verbund centrale central rk',
  group: 'group grp sg circuitgroup suctiongroup gruppo gruppe groupe grupo groep',
  circuit:
    'circuit circuits circ ckt cct lineup line system sys kreis kuhlstelle circuito kring lu lineaire lineaires',
  case: 'case cases cabinet cab display unit fixture vitrine vitrina mobel meuble mueble regal truhe insel cell room zone section cse',
  medium: 'mt medium mtemp medtemp nk chilled chill positif positive positivo positiva',
  low: 'lt low ltemp lowtemp tk frozen freezer negatif negative negativo negativa',
  position:
    'left right center centre middle front rear back top bottom upper lower end links rechts mitte gauche droite milieu izquierda derecha centro sinistra destra ctr cntr mid lft rgt lh lhs rhs near far sx dx izq izda izqda der dcha dcho izquierdo derecho esquerda esquerdo direita direito avant arriere haut bas vorne hinten oben unten voor achter boven onder midden sinistro destro',
  number: 'no nr num number',
} as const;

export type Meaning = keyof typeof meanings;

const byWord = new Map<string, Meaning>();
for (const [meaning, words] of Object.entries(meanings) as [Meaning, string][]) {
  for (const word of words.split(' ')) if (!byWord.has(word)) byWord.set(word, meaning);
}

export function meaningOfWord(word: string): Meaning | null {
  return byWord.get(word) ?? null;
}

/** Words that count as one meaning only together, such as cut-in: alone they are names of goods or places. */
const pairs: Readonly<{ [words: string]: Meaning }> = {
  'cut in': 'set',
  'cut out': 'set',
  'air off': 'discharge',
  'air on': 'return',
  'far left': 'position',
  'far right': 'position',
  'far end': 'position',
  'frozen food': 'low',
  'frozen foods': 'low',
  'reach in': 'circuit',
  'walk in': 'circuit',
  'p 0': 'suction',
  'set pt': 'set',
  'wet bulb': 'humidity',
  'dew point': 'humidity',
  'p ref': 'highSide',
  'p hoch': 'highSide',
  'druck hoch': 'highSide',
  'p nieder': 'suction',
  'druck nieder': 'suction',
  'sat suction': 'saturated',
  'sat suct': 'saturated',
  'sat suc': 'saturated',
  'sat cnd': 'saturated',
  'sat temp': 'saturated',
  'evap sat': 'saturated',
  'sat evap': 'saturated',
  'cond sat': 'saturated',
  'sat cond': 'saturated',
  'off coil': 'discharge',
  'on coil': 'return',
  'liquid line': 'liquid',
  'liq line': 'liquid',
  'suction line': 'suction',
  'suct line': 'suction',
  'super heat': 'superheat',
  'ue h': 'superheat',
  'gas cooler': 'condenser',
  'low side': 'suction',
  'low pressure': 'suction',
  'basse pression': 'suction',
  'pression basse': 'suction',
  'bassa pressione': 'suction',
  'pressione bassa': 'suction',
  'baja presion': 'suction',
  'presion baja': 'suction',
  'baixa pressao': 'suction',
  'pressao baixa': 'suction',
  'high side': 'highSide',
  'high pressure': 'highSide',
  'haute pression': 'highSide',
  'pression haute': 'highSide',
  'alta pressione': 'highSide',
  'pressione alta': 'highSide',
  'alta presion': 'highSide',
  'presion alta': 'highSide',
  'alta pressao': 'highSide',
  'pressao alta': 'highSide',
};

export function meaningOfPair(first: string, second: string): Meaning | null {
  return pairs[`${first} ${second}`] ?? null;
}

/** `suctpress` as `suct` and `press`: a run of letters that is wholly made of known words of three letters or more. */
export function knownParts(word: string): string[] | null {
  if (word.length < 6 || word.length > 30) return null;
  const best: (string[] | null)[] = [[]];
  for (let end = 1; end <= word.length; end++) {
    best.push(null);
    for (let start = Math.max(0, end - 14); start <= end - 3; start++) {
      const before = best[start];
      if (before === null || before === undefined || !byWord.has(word.slice(start, end))) continue;
      const parts = [...before, word.slice(start, end)];
      const current = best[end];
      if (current === null || current === undefined || parts.length < current.length) best[end] = parts;
    }
  }
  const parts = best[word.length];
  return parts !== null && parts !== undefined && parts.length > 1 ? parts : null;
}
