"""Words of shape in English, and the Latin ones that do not follow from the English by rule.

Sources: W. T. Stearn, Botanical Latin, and the usage of floras; from memory. A Latin word stands in the
nominative singular masculine; entries read `english = latin latin;`, with `_` for a space.
"""

from __future__ import annotations

OUTLINES = """
filiform capillary capillaceous acicular aciculate needlelike needly linear loriform ligulate liguliform lorate
strapshaped taeniate ribbonlike graminiform grassy lanceolate lanceate lancelike lanceolar oblanceolate oblong elliptic
elliptical oval ovate ovated obovate oboval ovoidal orbicular orbiculate circular round rounded roundish rotund
rotundate suborbicular nummular nummularioid lenticular deltoid deltate deltoidal triangular trullate obtrullate
obdeltoid obtriangular rhombic rhomboid rhomboidal rhombiform quadrate square quadrangular rectangular trapeziform
trapezoid trapezoidal polygonal pentagonal hexagonal falcate falciform ensiform gladiate swordlike xiphoid subulate
subuliform awllike aciform spathulate spatulate spathuliform spatuliform cordate cordiform cordulate obcordate
obcordiform reniform peltate peltiform hastate hastulate sagittate sagittiform auriculate auricled auriculiform eared
semicordate runcinate lyrate lyriform panduriform pandurate oblique oblate obreniform cuneate cuneiform cuneated wedge
attenuate attenuated tapering tapered narrowed contracted constricted decurrent unequal equal inequilateral equilateral
asymmetric asymmetrical symmetric symmetrical unsymmetrical regular irregular actinomorphic zygomorphic radiate radial
bilateral flabellate flabelliform fanlike lunate lunulate lunular semilunar crescentic semicircular semiorbicular
cultrate cultriform dolabriform dolabrate acinaciform dimidiate sigmoid sigmoidal ungulate unguiculate clawed clawless
cymbiform navicular naviculate boatlike scaphoid scaphiform cucullate cuculliform hooded galeate galeiform helmeted
saccate saccular bursiform pouched gibbous gibbose ventricose inflated swollen tumid turgid bladdery vesicular
vesiculose bullate concave convex biconvex biconcave planoconvex plane flat flattish flattened compressed applanate
complanate depressed channelled channeled canaliculate caniculate guttered conduplicate folded plicate pleated infolded
replicate involute convolute revolute rolled inrolled twisted contorted tortuous spiral spiralled coiled helical
cochleate cochlear circinate curled curly crimped curved curving arcuate arched straight incurvate hooked uncinate
hamate uncate barbed glochidiate geniculate kneed bent flexuous flexuose zigzag sinuous slender slim gracile graceful
stout stocky robust thickened incrassate narrow thickset bulky dilated expanded enlarged widened broadened bulbous
elongate elongated attenuating lengthened shortened abbreviated ligular setaceous setiform capilliform fusiform acerose
acerous tapelike keeled carinate carinal bicarinate ridged winged alate wingless apterous crested
cristate spurred calcarate spurless ecalcarate calcariform beaked rostrate beakless erostrate rostellate horned cornute
corniculate cornigerous pouchlike saclike bilabiate lipped labiate ringent gaping personate papilionaceous cruciform
cruciate bracteiform foliaceous leafy leaflike phylloid petaloid petaline petallike sepaloid scalelike squamiform
bractlike glumaceous awnlike hairlike threadlike bristlelike bristleform spinelike spiniform spinescent
"""

DIVISION = """
simple compound decompound supradecompound pinnate pinnated bipinnate tripinnate quadripinnate paripinnate
imparipinnate pinnatifid bipinnatifid tripinnatifid pinnatisect bipinnatisect tripinnatisect pinnatipartite
pinnatilobate pinnatilobed palmate palmated palmatifid palmatisect palmatipartite palmatilobate palmatilobed pedate
pedatifid pedatisect digitate trifoliolate trifoliate ternate biternate triternate ternatisect bifoliolate unifoliolate
unifoliate bifoliate quadrifoliolate quinquefoliolate plurifoliolate multifoliolate trichotomous dichotomous bifurcate
furcate forked trifurcate bifid trifid quadrifid quinquefid multifid bipartite tripartite quinquepartite multipartite
parted partite dissected dissect divided undivided cleft cut incised slashed lobed lobate lobulate bilobed trilobed
bilobate trilobate unlobed multilobed quinquelobed quinquelobate quadrilobed quadrilobate pentalobed cleaved bisected
trisected trisect bisect septate sectile laciniated foliolate nonlobed multisect
"""

MARGIN = """
entire toothed dentate dentated denticulate denticulated serrate serrated serrulate serrulated biserrate crenate
crenated crenulate crenulated bicrenate scalloped wavy undulate undulated undulating repand repandous sinuate sinuated
erose eroded gnawed lacerate lacerated torn laciniate laciniolate lacinulate jagged fimbriate fimbriated fimbrillate
fimbriolate fringed crisped crispate crispulate ruffled frilled frilly crinkled untoothed uncut bidenticulate
sawtoothed edentate multidentate pluridentate
"""

APEX = """
acute acutish obtuse obtusish blunt bluntish blunted pointed sharp acuminate acuminated acuminulate apiculate
apiculated mucronate mucronated mucronulate submucronate emarginate emarginated retuse cuspidate cuspidated cuspidulate
aristate aristated aristulate awned awnless exaristate muticous caudate caudated tailed pungent cirrhose cirrhous
cirrose rostrulate tricuspidate bicuspidate bimucronate hebetate notched
"""

SOLIDS = """
lanceoloid ovaloid ovoid obovoid globose globular globoid globulose spherical sphaeroid spheroid spheroidal spheric
hemispheric hemispherical ellipsoid ellipsoidal oblongoid oblongoidal cylindric cylindrical cylindraceous conic conical
conoid conoidal obconic obconical campanulate campanulated campaniform bell belllike tubular tubulose tubulous tubiform
tubelike infundibular infundibuliform funnelform funnellike urceolate urceolar pitcherlike salverform hypocrateriform
hypocraterimorphous rotate rotaceous wheellike stellate starry starlike substellate cyathiform cupular cupulate
cupuliform cuplike cupped crateriform saucerlike pyriform pearlike obpyriform turbinate toplike turbiniform clavate
claviform clublike clubbed clavellate capitate capitellate headlike knobbed knoblike terete angled angular angulate
angulose multangular triquetrous triquetrose trigonous trigonal triangulate tetragonal tetragonous quadrangulate
pentangular pentagonous polyhedral cubic cuboid cubical prismatic pyramidal pyramidate obpyramidal discoid discoidal
disciform disclike disklike scutate scutellate scutelliform patelliform lenticulate lentiform moniliform torulose
torose beaded nodose knotted noded napiform turniplike tuberiform tuberous bulbiform bulbose fistulate ampullaceous
ampulliform lageniform vasiform urniform amphoral doliiform dolioform botuliform allantoid vermiform vermicular
digitiform fingerlike pedicelliform pulvinate cushionlike umbonate umbilicate mammillate mammilliform mamillate
apiculiform teretiform lamellate lamelliform laminar laminate sheathing sheathlike tunicate annular anular ringlike
toroidal oviform eggshaped egglike didymous obclavate gongylodal scrotiform baccate bacciform drupaceous capsular
coniform strobiliform
"""

BASE = """
premorse praemorse cirrhiferous upcurved downcurved outcurved upturned downturned bowed truncate truncated perfoliate
amplexicaul amplexicaulous clasping stemclasping semiamplexicaul auricular biauriculate excavate hollowed sunken
impressed intruded swordshaped basifixed shaped formed
"""

LATIN = """
capillary = capillaris; oblong = oblongus oblongatus; gibbous = gibber; premorse = praemorsus; linear = linealis;
lanceolate = lanceatus; elliptic = ellipticus; oval = ovalis; ovate = ovatus; orbicular = orbiculatus circularis; round
= rotundus teretiusculus; rounded = rotundatus; subrounded = subrotundus subrotundatus; triangular = trianguliformis;
deltoid = deltoideus deltatus deltoides; rhombic = rhombeus rhombicus; rhomboid = rhomboideus rhomboides rhomboidalis;
square = quadratus; quadrangular = quadrangulus quadrangularis quadrangulatus tetragonus; trapeziform = trapezoideus;
sword-shaped = ensatus; subulate = subulatus; auriculate = auritus; panduriform = panduratus; oblique = obliquus;
cuneate = cuneatus cunealis; attenuate = angustatus; narrowed = coarctatus; contracted = contractus; constricted =
constrictus; unequal = inaequalis dispar; equal = aequalis aequans; inequilateral = inaequilaterus inaequilateralis
inaequilater; irregular = irregularis; regular = regularis; fan-shaped = flabellaris; crescent-shaped = lunatus;
boat-shaped = cymbaeformis navicularis; gibbous = gibbus gibbosus; inflated = inflatus; swollen = tumidus turgidus
turgens; flat = planus; flattened = complanatus applanatus explanatus; flattish = planiusculus; compressed =
compressus; depressed = depressus; concave = concavus; convex = convexus; channelled = canaliculatus; folded =
complicatus; plicate = plicatus plicatilis; revolute = revolutus; twisted = tortus contortus tortilis; tortuous =
tortuosus; spiral = spiralis; coiled = spiratus; curled = cirratus; curved = curvatus curvus curvulus; arcuate =
arcuatus; straight = rectus strictus; hooked = uncinatus hamatus hamosus; geniculate = geniculatus; flexuous =
flexuosus; slender = gracilis gracilescens tenuis graciliusculus; stout = robustus validus; thickened = incrassatus;
dilated = dilatatus; enlarged = ampliatus auctus accrescens; narrow = angustus angustissimus; elongate = elongatus;
widened = latescens; keeled = carinatus; winged = alatus; wingless = apterus exalatus; crested =
cristatus; spurred = calcaratus; spurless = ecalcaratus; beaked = rostratus; beakless = erostris erostratus; horned =
cornutus; two-lipped = bilabiatus; gaping = ringens hians; papilionaceous = papilionaceus; foliaceous = foliaceus
foliosus; simple = simplex; compound = compositus; decompound = decompositus supradecompositus;
pinnate = pinnatus; palmate = palmatus palmaris; trifoliolate = trifoliolatus trifoliatus; ternate = ternatus; forked =
furcatus furcellatus dichotomus; bifid = bifidus; parted = partitus; divided = divisus; undivided = indivisus; cut =
sectus; incised = incisus; dissected = dissectus; lobed = lobatus lobosus; lobulate = lobulatus; bilobed = bilobus
bilobatus; trilobed = trilobus trilobatus; four-lobed = quadrilobus quadrilobatus; five-lobed = quinquelobus
quinquelobatus; many-lobed = multilobus multilobatus; unlobed = elobatus; three-parted = tripartitus; two-parted =
bipartitus; four-parted = quadripartitus; five-parted = quinquepartitus; two-lobed = dilobus; entire = integer
integerrimus integrus; toothed = dentosus; serrate = serratus serrans; wavy = undatus; sinuate = sinuosus; erose =
erosus; lacerate = lacer laceratus; crisped = crispus crispatus crispulus; acute = acutus acutatus acutiusculus; obtuse
= obtusus obtusatus obtusiusculus; blunt = hebetatus; retuse = retusus; acutish = acutulus; emarginate = emarginatus;
awned = aristatus; awnless = muticus exaristatus; tailed = caudatus; pungent = pungens; mucronate = mucronatus
mucronifer; ovoid = ovoideus ovoides; obovoid = obovoideus; egg-shaped = oviformis; globose = globosus globulosus
sphaericus sphaeroideus globularis; subglobose = subglobosus subsphaericus; hemispherical = hemisphaericus
semiglobosus; ellipsoid = ellipsoideus ellipsoidalis; cylindrical = cylindricus cylindraceus; conical = conicus
conoideus; obconical = obconicus; bell-shaped = campanularis; campanulate = campanulatus campaniformis campanaceus;
tubular = tubulosus tubulatus tubularis tubuliformis; funnel-shaped = infundibularis infundibuliformis infundibulus;
urceolate = urceolatus urceolaris; salver-shaped = hypocrateriformis hypocraterimorphus; rotate = rotatus rotaceus;
stellate = stellatus stellaris; cup-shaped = cyathiformis cupularis cupulatus cupuliformis; pear-shaped = pyriformis
piriformis; top-shaped = turbinatus; club-shaped = clavatus claviformis; clavate = clavatus clavellatus; capitate =
capitatus; terete = teres; angled = angulatus angulosus angularis; trigonous = trigonus triqueter triquetrus;
three-angled = triangulatus triangulus trigonalis; four-angled = tetraquetrus; five-angled = quinquangularis pentagonus
quinquangulatus quinquangulus; discoid = discoideus; moniliform = moniliformis; nodose = nodosus; torulose = torulosus;
disciform = disciformis; truncate = truncatus; clasping = amplectens amplexans; amplexicaul = amplexicaulis; sheathing
= vaginans; perfoliate = perfoliatus; saccate = saccatus; hooded = cucullatus; helmet-shaped = galeatus; hollowed =
excavatus; impressed = impressus; cordate = cordatus cordiformis; leaf-like = phylloideus foliiformis; petaloid =
petaloideus; zygomorphic = zygomorphus; actinomorphic = actinomorphus; ensiform = gladiatus; ventricose = ventricosus;
bullate = bullatus; conduplicate = conduplicatus; setaceous = setaceus; mammillate = mamillatus mammillatus mammosus
"""
