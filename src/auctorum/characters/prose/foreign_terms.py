"""Words of the trade in Spanish, Portuguese, Italian, French and German, where they do not follow from the English.

Entries read `english = word word;`, with `_` for a space; a word stands in the masculine singular with its accents, the
end telling how it is declined. From memory; the forms are those of floras and protologues.
"""

from __future__ import annotations

ROMANCE = """
linear = linéaire lineare; filiform = filiforme; lanceolate = lanceolado lancéolé; oblong = oblongo alargado allongé
oblungo bislungo; elliptic = elíptico elliptique ellittico; oval = oval ovale; ovate = aovado ovado ovalado; obovate =
trasovado obovado obové; oblanceolate = oblanceolado oblancéolé; orbicular = orbicular orbiculaire orbicolare; round =
redondo rond rotondo; circular = circular circulaire circolare; rounded = redondeado arredondado arrondi arrotondato;
triangular = triangular triangulaire triangolare; rhombic = rómbico romboidal rhomboïdal losangé; square = cuadrado
quadrado carré; quadrangular = cuadrangular quadrangolare; falcate = falcado; ensiform = ensiforme; subulate = alesnado
subulado subulé; spathulate = espatulado spatulé spatolato; cordate = acorazonado cordado cordiforme cordé; obcordate =
obcordado obcordé; reniform = reniforme arriñonado rénaire; peltate = peltado pelté; hastate = hastado alabardado;
sagittate = sagitado aflechado sagitté; auriculate = auriculado aurículado orejudo; cuneate = cuneado cuneiforme
acuñado cunéaire; attenuate = atenuado atténué attenuato; narrowed = estrechado estreitado rétréci ristretto
adelgazado; unequal = desigual inégal diseguale ineguale; equal = igual égal uguale eguale; oblique = oblicuo oblíquo
oblique obliquo; asymmetric = asimétrico assimétrico asymétrique; irregular = irregular irrégulier; regular = régulier
regolare; flat = plano plan; flattened = aplanado achatado aplati appiattito aplastado; compressed = comprimido
comprimé compresso; concave = cóncavo côncavo concave concavo; convex = convexo convexe convesso; channelled =
acanalado canalículado canaliculé scanalato; folded = doblado plegado dobrado plié piegato; revolute = revoluto
révoluté enroulé; twisted = retorcido torcido tordu contorto ritorto; tortuous = tortuoso tortueux; curved = curvado
curvo encurvado courbé courbe incurvé; arcuate = arqueado arqué arcuato; straight = recto reto droit dritto diritto;
hooked = ganchudo ganchoso uncinado crochu uncinato; slender = delgado esbelto grácil fino mince grêle gracile esile;
stout = robusto robuste trapu; thickened = engrosado espessado engrossado épaissi ispessito ingrossato; narrow =
estrecho angosto estreito étroit stretto; winged = alado ailé alato; keeled = aquillado carenado quilhado caréné;
ribbed = acostillado costillado côtelé costato; beaked = rostrado picudo rostré; spurred = espolonado éperonné;
inflated = inflado hinchado renflé enflé rigonfio; two-lipped = bilabiado bilabié bilabiato; hooded = cuculado
capuchado encapuchonné; sheathing = envainador envaginante engainant envainante inguainante; clasping = abrazador
amplexicaule embrassant abraçante; simple = simple simples semplice; compound = compuesto composto composé; pinnate =
pinado penado pinnado pennado penné pinné; bipinnate = bipinado bipenné bipinado; pinnatifid = pinatífido pinnatífido
pinatifido pinnatifide pennatifide; pinnatisect = pinatisecto pinatissecto pennatiséqué; palmate = palmado palmeado
palmé; trifoliolate = trifoliado trifoliolado trifolié trifoliolé; ternate = ternado terné; forked = bifurcado
horquillado fourchu forcuto; bifid = bífido bifide; trifid = trífido trifide; divided = dividido divisé diviso;
undivided = indiviso indivis; lobed = lobado lobulado lobé lobato; bilobed = bilobado bilobé; trilobed = trilobado
trilobé; incised = inciso incisé hendido; cut = cortado découpé; laciniate = laciniado lacinié; entire = entero íntegro
inteiro entier intero; toothed = dentado denté dentato; denticulate = denticulado denticulé; serrate = aserrado serrado
serreado dentellé seghettato; serrulate = serrulado; crenate = crenado festoneado crénelé crenato; crenulate =
crenulado crénulé; wavy = ondulado ondeado ondulé ondulato; sinuate = sinuado sinué; erose = eroso roído rongé; crisped
= crespo crispado rizado crépu crispé; fringed = fimbriado franjado frangé; lacerate = lacerado lacéré; acute = agudo
aigu acuto aguzado; obtuse = obtuso romo obtus ottuso; acuminate = acuminado acuminé; mucronate = mucronado mucroné;
apiculate = apiculado apiculé; emarginate = emarginado escotado échancré smarginato; retuse = retuso rétus; cuspidate =
cuspidado cuspidé; awned = aristado aristé; tailed = caudado caudé; truncate = truncado tronqué troncato; pointed =
puntiagudo pontiagudo pointu aguçado apuntado appuntito; blunt = embotado émoussé; pungent = punzante pungente piquant;
notched = entaillé; ovoid = ovoide ovóide aovoide ovoïde ovóideo; egg-shaped = oviforme; globose = globoso globuleux
esférico sphérique esférico sferico globuloso; ellipsoid = elipsoide elipsóide ellipsoïde; cylindrical = cilíndrico
cylindrique cilindrico rollizo; conical = cónico cônico conique conico; bell-shaped = acampanado campaniforme;
campanulate = campanulado campanulé; tubular = tubuloso tubular tubulaire tubuleux tuboloso tubolare; funnel-shaped =
embudado infundibuliforme afunilado; urceolate = urceolado urcéolé; rotate = rotáceo rotáceo; star-shaped = estrellado
étoilé estrelado stellato; pear-shaped = piriforme; club-shaped = claviforme; clavate = clavado; terete = teretiforme
roliço; angled = anguloso anguleux angoloso angulado; trigonous = trígono trigone trígono; disc-shaped = discoidal
discoïde; capitate = capitado; glabrous = glabro lampiño glabre; glabrescent = glabrescente; naked = desnudo; hairy =
peludo velludo peloso poilu; pubescent = pubescente; puberulous = pubérulo pubérulent puberulento; pilose = piloso
poileux; villous = velloso viloso villoso velu vilosulo; woolly = lanoso lanudo laineux; cottony = algodonoso cotonoso
cotonneux; tomentose = tomentoso tomenteux; velvety = aterciopelado aveludado velouté vellutato; silky = sedoso soyeux;
strigose = estrigoso strigueux strigoso; hirsute = hirsuto hirsute irsuto hérissé; hispid = híspido hispide ispido;
bristly = cerdoso setoso sétoso; ciliate = ciliado cilié cigliato; bearded = barbado barbudo barbu barbato; stellate =
estelado étoileux; hoary = cano; scaly = escamoso écailleux squamoso; eglandular = eglandular eglanduloso; glandular =
glanduloso glandular glanduleux ghiandoloso; viscid = viscoso víscido visqueux vischioso; sticky = pegajoso collant
appiccicoso gluant; pruinose = pruinoso pruineux; glaucous = glauco glauque; mealy = harinoso farineux farinhoso;
punctate = punteado pontuado ponctué punteggiato; smooth = liso lisse liscio; rough = áspero ruvido rude; scabrous =
escabroso scabre escabro scabro; wrinkled = arrugado enrugado ridé; rugose = rugoso rugueux; verrucose = verrugoso
verruqueux verrucoso; tuberculate = tuberculado tuberculé tubercolato; reticulate = reticulado réticulé reticolato;
striate = estriado strié striato; sulcate = surcado sulcado solcato; grooved = asurcado sillonné; veined = nervado
veiné venato; nerved = nervado nervuré; shining = brillante lustroso brilhante luisant lucente brillant reluciente;
dull = opaco opaque mate; spiny = espinoso espinhoso épineux spinoso; prickly = aculeado aguijonoso aculéolé; unarmed =
inerme; papillose = papiloso papilleux; smooth = alisado; scurfy = furfuráceo; granular = granuloso granuleux; warty =
verrugado verrucado; white = blanc blanco branco bianco albo; whitish = blanquecino blanchâtre esbranquiçado biancastro
blanquizco alvacento esbranquicento; black = negro preto noir nero; blackish = negruzco enegrecido noirâtre nerastro
anegrado; grey = gris cinza grigio; greyish = grisáceo acinzentado grisâtre grigiastro agrisado; ash-grey = ceniciento
cinéreo cendré cinerino; red = rojo vermelho rouge rosso encarnado; reddish = rojizo avermelhado rougeâtre rossastro
rubicundo; orange = naranja anaranjado laranja alaranjado orange orangé arancione naranjado aranciato; yellow =
amarillo amarelo jaune giallo; yellowish = amarillento amarelado jaunâtre giallastro amarelento giallognolo; green =
verde vert; greenish = verdoso esverdeado verdâtre verdastro verduzco; bluish = azulado bleuâtre azulino bluastro; blue
= azul bleu blu azzurro; violet = violeta violáceo violet violacé viola violetto roxo; purple = púrpura purpúreo
pourpre morado purpurino porpora; purplish = purpurado purpurascente arroxeado pourpré amoratado purpurescente; pink =
rosado rosa róseo rose roseo rosato; pinkish = rosáceo; brown = marrón pardo castaño marrom castanho brun marron
marrone bruno café; brownish = parduzco pardusco acastanhado brunâtre amarronado brunastro amarronzado; cream = crema
creme crème cremoso; ivory = marfil marfim ivoire avorio; golden = dorado dourado doré dorato áureo; silvery = plateado
prateado argenté argentato argénteo; lilac = lila lilás lilacino; scarlet = escarlata escarlate écarlate scarlatto;
crimson = carmesí carmesim cramoisi cremisi; carmine = carmín carmim carmin carminio; wine-red = vinoso vináceo vineux;
tawny = leonado fauve fulvo; ferruginous = ferrugíneo ferrugineux herrumbroso; ochre = ocre ocra; straw-coloured =
pajizo estramíneo paillé; sulphur-yellow = azufrado soufré; lemon-yellow = limón limão citrino; salmon = salmón salmão
saumon asalmonado; rufous = roux rufo ruivo; mauve = malva; magenta = magenta; olive = oliváceo olivâtre olivastro;
bluish_green = verdiazul; pale = pálido pâle pallido; dark = oscuro escuro foncé scuro obscur; two-coloured = bicolor
bicolore; spotted = manchado maculado tacheté moteado maculé macchiato pintalgado; striped = rayado listrado rayé;
variegated = variegado panaché abigarrado jaspeado; tinged = teñido teinté tingido tinto; suffused = lavado lavé;
speckled = pontilhado mouchado moucheté; veined = veteado; dotted = punctado; coriaceous = coriáceo coriace coriaceo;
leathery = correoso; membranous = membranoso membranáceo membraneux; fleshy = carnoso charnu crasso; succulent =
suculento; papery = papiráceo papyracé; chartaceous = cartáceo; herbaceous = herbáceo herbacé erbaceo; woody = leñoso
lenhoso ligneux legnoso; rigid = rígido rigide rigido raide; stiff = tieso; soft = blando mole mou mol molle; firm =
firme ferme; hard = duro dur; thin = tenue ténu sottile; flexible = flexible flexível; translucent = translúcido
translucide traslúcido; hollow = hueco oco creux cavo; solid = sólido macizo maciço; lax = laxo lâche; dense = denso
denso; scarious = escarioso scarieux; erect = erecto erguido ereto érigé eretto erguido dressé enhiesto; ascending =
ascendente ascendant; spreading = patente extendido étalé patulo; lax = laxo; pendulous = péndulo colgante pêndulo
pendulo; nodding = cabizbajo inclinado penché; reflexed = reflejo reflexo réfléchi riflesso; recurved = recurvado
recurvo recourbé ricurvo; incurved = incurvo; prostrate = postrado prostrado couché prostrato; decumbent = decumbente;
creeping = rastrero rastejante rampant strisciante; climbing = trepador escandente grimpant rampicante; appressed =
adpreso apprimé adpresso apresso appliqué; branched = ramificado ramoso rameux ramifié ramosissimo; tufted = cespitoso
cespeado cespiteux cespuglioso; shrubby = arbustivo buissonnant frutescente; arborescent = arbóreo arborescente; annual
= anual annuel annuale; biennial = bienal bisannuel biennale; perennial = perenne vivace; stemless = acaule; sessile =
sésil séssil sessile; petiolate = peciolado pecíolado; pedicellate = pedicelado; pedunculate = pedunculado pédonculé
peduncolato; alternate = alterno alterne; opposite = opuesto oposto opposé opposto; whorled = verticilado verticillé;
distichous = dístico distique; imbricate = imbricado imbriqué embricato; clustered = agrupado agregado fasciculado;
connate = connado conné; united = unido concrescente soudé saldato; free = libre livre libero; exserted = exserto
exserte sporgente salient; included = incluido incluso inclus; inferior = ínfero infère infero; superior = súpero
supère supero; axillary = axilar axillaire ascellare; terminal = terminale; lateral = laterale latéral; basal = basale;
solid = massif; persistent = persistente persistant; deciduous = deciduo décidu; caducous = caduco caduc; fugacious =
fugaz; evergreen = perennifolio siempreverde sempervirente; dehiscent = dehiscente déhiscent; indehiscent =
indehiscente indéhiscent indeiscente; fragrant = fragante oloroso perfumado odorant odoroso fragrante parfumé profumato
cheiroso aromático; odourless = inodoro inodore; foetid = fétido fétide; fertile = fértil; sterile = estéril stérile;
dioecious = dioico dióico dioïque; monoecious = monoico monóico monoïque; hermaphrodite = hermafrodita hermafrodito
ermafrodito; male = masculino masculin maschile; female = femenino feminino féminin femminile; absent = ausente
assente; present = presente présent; conspicuous = conspicuo conspícuo; inconspicuous = inconspicuo inconspícuo;
prominent = prominente saliente; concolorous = concolor; discolorous = discolor discolore
"""

GERMAN = """
filiform = fadenförmig fädlich; linear = linealisch lineal linear linealförmig; lanceolate = lanzettlich lanzettförmig
lanzettig; oblong = länglich; elliptic = elliptisch; oval = oval; ovate = eiförmig eirund; obovate = verkehrteiförmig;
oblanceolate = verkehrtlanzettlich; orbicular = kreisrund kreisförmig; round = rund; rounded = abgerundet gerundet
zugerundet; roundish = rundlich; triangular = dreieckig; rhombic = rautenförmig rhombisch; falcate = sichelförmig;
sword-shaped = schwertförmig; subulate = pfriemlich pfriemenförmig pfriemförmig; acicular = nadelförmig; spathulate =
spatelförmig spatelig; cordate = herzförmig; obcordate = verkehrtherzförmig; reniform = nierenförmig; peltate =
schildförmig; hastate = spießförmig; sagittate = pfeilförmig; cuneate = keilförmig keilig; attenuate = verschmälert;
narrowed = verengt; lyrate = leierförmig; auriculate = geöhrt; runcinate = schrotsägeförmig; flat = flach eben;
flattened = abgeflacht; compressed = zusammengedrückt; folded = gefaltet; channelled = rinnig; keeled = gekielt; winged
= geflügelt; beaked = geschnäbelt; spurred = gespornt; hooked = hakig hakenförmig; curved = gekrümmt gebogen; straight
= gerade; twisted = gedreht; slender = schlank; stout = kräftig dicklich; thickened = verdickt; inflated = aufgeblasen;
narrow = schmal; simple = einfach; compound = zusammengesetzt; pinnate = gefiedert; bipinnate = doppeltgefiedert;
pinnatifid = fiederspaltig; pinnatisect = fiederschnittig; palmate = handförmig gefingert; digitate = fingerförmig;
ternate = dreizählig; lobed = gelappt lappig; pinnately_lobed = fiederlappig; trilobed = dreilappig; bilobed =
zweilappig; divided = geteilt; undivided = ungeteilt; cleft = gespalten; two-lipped = zweilippig; forked = gegabelt;
entire = ganzrandig; toothed = gezähnt; denticulate = gezähnelt; serrate = gesägt; serrulate = feingesägt; crenate =
gekerbt; wavy = gewellt wellig; sinuate = buchtig gebuchtet; incised = eingeschnitten; fringed = gefranst; laciniate =
geschlitzt; crisped = kraus; acute = spitz; obtuse = stumpf; acuminate = zugespitzt; mucronate = stachelspitzig;
emarginate = ausgerandet; awned = begrannt grannig; truncate = gestutzt abgestutzt; bluntish = stumpflich; acutish =
spitzlich; globose = kugelig kugelförmig; cylindrical = zylindrisch walzlich walzenförmig; conical = kegelförmig
kegelig; bell-shaped = glockenförmig glockig; tubular = röhrig röhrenförmig; funnel-shaped = trichterförmig trichterig;
urceolate = krugförmig; rotate = radförmig; star-shaped = sternförmig; pear-shaped = birnförmig; club-shaped =
keulenförmig keulig; capitate = kopfig kopfförmig; angled = kantig; three-angled = dreikantig; four-angled =
vierkantig; terete = stielrund; cup-shaped = becherförmig; clasping = stängelumfassend stengelumfassend; disc-shaped =
scheibenförmig; glabrous = kahl unbehaart; glabrescent = verkahlend; naked = nackt; hairy = behaart haarig; pubescent =
flaumig weichhaarig; downy = flaumhaarig; pilose = langhaarig; villous = zottig; woolly = wollig; tomentose = filzig;
velvety = samtig; silky = seidig seidenhaarig; strigose = striegelhaarig; hirsute = rauhaarig; hispid = steifhaarig;
bristly = borstig; ciliate = gewimpert bewimpert; bearded = bärtig gebärtet; stellate-hairy = sternhaarig; short-haired
= kurzhaarig; scaly = schuppig beschuppt; glandular = drüsig; glandular-hairy = drüsenhaarig; eglandular = drüsenlos;
sticky = klebrig; pruinose = bereift; glaucous = glauk; mealy = mehlig; punctate = punktiert; smooth = glatt; rough =
rau rauh; wrinkled = runzelig runzlig; warty = warzig; tuberculate = höckerig höckrig; reticulate = netzig; net-veined
= netznervig; striate = gerillt; grooved = gefurcht furchig; ribbed = gerippt rippig; shining = glänzend; dull = matt;
spiny = dornig bedornt; prickly = stachelig bestachelt; unarmed = unbewehrt wehrlos; papillose = papillös; white =
weiß; snow-white = schneeweiß; whitish = weißlich; black = schwarz; blackish = schwärzlich; grey = grau; greyish =
gräulich graulich; ash-grey = aschgrau; red = rot; reddish = rötlich; orange = orangefarben; yellow = gelb; yellowish =
gelblich; green = grün; greenish = grünlich; blue = blau; bluish = bläulich; sky-blue = himmelblau; violet = violett
veilchenblau; purple = purpurn purpur; purplish = purpurlich; pink = rosa rosafarben; pinkish = rosalich; brown =
braun; brownish = bräunlich; cream = cremefarben; golden = golden goldgelb; silvery = silbrig silbern; lilac = lila;
scarlet = scharlachrot; crimson = karminrot; rust-coloured = rostfarben; straw-coloured = strohfarben; sulphur-yellow =
schwefelgelb; lemon-yellow = zitronengelb; blood-red = blutrot; brick-red = ziegelrot; flesh-coloured = fleischfarben;
pale = bleich fahl; two-coloured = zweifarbig; many-coloured = bunt; spotted = gefleckt fleckig; striped = gestreift;
veined = geadert; tinged = überlaufen; dotted = getüpfelt; coriaceous = lederig ledrig; leathery = lederartig;
membranous = häutig; scarious = trockenhäutig; fleshy = fleischig; woody = holzig verholzt; herbaceous = krautig; rigid
= starr; stiff = steif; soft = weich; hard = hart; thin = dünn; hollow = hohl; erect = aufrecht; ascending =
aufsteigend; spreading = abstehend ausgebreitet; pendulous = hängend herabhängend; nodding = nickend; reflexed =
zurückgeschlagen; recurved = zurückgekrümmt zurückgebogen; prostrate = niederliegend niedergestreckt; creeping =
kriechend; climbing = kletternd; twining = windend; appressed = anliegend angedrückt; branched = verzweigt ästig;
unbranched = unverzweigt; tufted = rasig rasenbildend; annual = einjährig; biennial = zweijährig; perennial =
ausdauernd mehrjährig; sessile = sitzend ungestielt; stalked = gestielt; alternate = wechselständig; opposite =
gegenständig; whorled = quirlständig wirtelig quirlig; distichous = zweizeilig; basal = grundständig; axillary =
achselständig blattachselständig; terminal = endständig; lateral = seitenständig; clustered = gebüschelt büschelig;
connate = verwachsen; free = frei; superior = oberständig; inferior = unterständig; persistent = bleibend; deciduous =
abfallend; caducous = hinfällig; evergreen = immergrün; fragrant = duftend wohlriechend; odourless = geruchlos; fertile
= fruchtbar fertil; sterile = unfruchtbar steril; dioecious = zweihäusig diözisch; monoecious = einhäusig;
hermaphrodite = zwittrig; male = männlich; female = weiblich; absent = fehlend; present = vorhanden; exserted =
herausragend; decurrent = herablaufend; jointed = gegliedert; leafless = blattlos; leafy = beblättert; leaf-like =
blattartig
"""

# First halves of German words printed solid: shades part with a space, the others with a hyphen.
GERMAN_FIRST = """
pale = hell blass zart; dark = dunkel tief; bright = leuchtend; broadly = breit; narrowly = schmal; densely = dicht;
finely = fein; shortly = kurz; long- = lang; softly = weich; sparsely = spärlich; linear- = lineal linealisch;
lanceolate- = lanzett; ovate- = ei eirund; oblong- = länglich; cordate- = herz; round- = rund; white- = weiß; black- =
schwarz; grey- = grau; red- = rot; yellow- = gelb; green- = grün; blue- = blau; violet- = violett; purple- = purpur;
pink- = rosa; brown- = braun; rust- = rost; glandular- = drüsig drüsen; woolly- = woll; silky- = seiden; whitish- =
weißlich; yellowish- = gelblich; greenish- = grünlich; reddish- = rötlich; orange- = orange; sulphur- = schwefel;
lemon- = zitronen; golden- = gold; wine- = wein; straw- = stroh; cherry- = kirsch; chestnut- = kastanien; ochre- =
ocker; olive- = oliv; silver- = silber; snow- = schnee; milk- = milch; steel- = stahl; rose- = rosen; slate- =
schiefer; leather- = leder; copper- = kupfer; brick- = ziegel; flesh- = fleisch; carmine- = karmin; cream- = creme;
sky- = himmel; obovate- = verkehrtei; blood- = blut; coal- = kohl; obtuse- = stumpf; acute- = spitz; star- = stern
"""

# Organs and everyday words that a form of an adjective looks like, mostly French ones that lost their accent.
OTHER_WORDS = """
axis petiole petioles stipule stipules ligule ligules lobe lobes lobi dente dentes denti spatule spatules aile ailes
carene carenes cuspide cuspides arete arille arilles areole areoles foliole folioles panicule panicules cupule cupules
corolle crete cana canas canae cani cane cave note une plan plane plans mole moles mas unie mate sale epine cote capite
capites valve valves opercule bractee bractees aristes ariste sete setes seta setae caude caudes mucron costa carpelle
carpelles pistille galee spathe spathes stipe stipes spica costas disque crine rosae rosarum rosam spine spina spini
fascie cirre plume plumes barbe barbes ramo rami rama ramos ramas squame squames cone coni venas vena vene veni venae
nervo nervi nerve glande glandes area areae bases basi base involucre involucres verticille verticilles limbe limbes
limbi ombelle filo spadice spadici pube fascicule rayo rayos raye rayes raya rayas punta punto vitta vittae macule
macules taches tache fleche ride rides tubercule tubercules apicule barbule cilium cilia cilii ciliis crenule membrane
membranes spinule spinules bulbus bulbi bulbo bulbis nervure venule venules haste hastes penne pennes pinne pinnes
strie stries veine veines lacinie lacinies denticule denticules pedoncule pedoncules nervures crenules cones branche
branchi flache flachen spitze spitzen mucrone mucrones apicules ochrea ochreae ocrea ocreae vine vines
"""
