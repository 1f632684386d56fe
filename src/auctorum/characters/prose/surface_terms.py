"""Words of the surface in English - hairs, glands, wax, relief, gloss, arms - and the Latin ones that go by no rule.

Sources and form as in `shape_terms`.
"""

from __future__ import annotations

HAIRS = """
glabrous glabrate glabrescent hairless bare naked nude bald calvous hairy haired pubescent puberulous puberulent
puberulose puberule downy pilose pilosulous pilosulose pilous piliferous piligerous shaggy villous villose villosulous
villosulose woolly wooly lanate lanose lanuginose lanuginous lanulose cottony floccose flocculose flocculent floccular
tomentose tomentous tomentulose tomentellous tomentellose felted felty velvety velutinous velutinose velvet silky
sericeous holosericeous arachnoid arachnoidal arachnose cobwebby cobwebbed strigose strigillose strigulose strigilose
strigous hirsute hirsutulous hirtellous hirtous hirtellose hirsutullous hispid hispidulous hispidulose hispidous
bristly bristled setose setulose setiferous setigerous setous setulous ciliate ciliated ciliolate cilious eciliate
bearded barbate barbellate barbellulate barbulate scaly beardless imberbous comose comate comous penicillate plumose
plumed feathery pectinate pectinated echinate echinulate muricate muriculate stellulate lepidote lepidotous scurfy
furfuraceous leprose canescent incanous hoary canous incanescent mealy crinite barbulous fuzzy furry fleecy plushy
eglabrous unhairy ramentaceous paleaceous chaffy
"""

GLANDS_AND_WAX = """
glandular eglandular glandulous glandulose glanduliferous eglandulose glandless viscid viscous viscidulous viscose
viscidulose sticky glutinous clammy gummy resinous resiniferous varnished greasy oily waxy ceraceous cerose ceriferous
pruinose pruinate pruinous bloomy glaucous glaucescent farinose farinaceous farinous powdery pulverulent epruinose
nonglaucous epunctate punctate punctated puncticulate punctulate dotted undotted pustulate pustular pustulose blistered
mucilaginous slimy lepidopunctate
"""

RELIEF_AND_GLOSS = """
ribbed costate smooth smoothish laevigate levigate rough roughish roughened scabrous scabrid scaberulous
scabridulous scabrellous scabrate asperous asperulous asperate asperulate uneven even papillose papillate papillar
papilliferous papillulose
verrucose verruculose verrucous warty warted verruciform tuberculate tuberculated tubercled tuberculose tubercular
reticulate reticulated netted reticulose rugose rugulose rugous wrinkled wrinkly rugate corrugate corrugated striate
striated striolate sulcate sulcated sulculate furrowed grooved fluted lineate lineolate lined ridgy foveate foveolate
faveolate favose alveolate pitted lacunose scrobiculate honeycombed areolate tessellate tesselate clathrate cancellate
veined veiny venose venous venulose venulous nerved nervose nervous veinless enervate nerveless avenous ribless
ecostate cracked fissured rimose rimulose furrowless flaky peeling exfoliating shredding scarred ringed annulate
granular granulate granulose granuliferous grainy colliculate gemmate ruminate shining shiny glossy lustrous polished
nitid nitidous lucid dull lustreless lusterless matt matte opaque sheeny satiny vernicose burnished unpolished
glossless lamellose squamose squamulose squamate
"""

ARMS = """
prickly spiny spinose spinous spinulose spinulous spinuliferous spiniferous aculeate aculeated aculeolate thorny
unarmed armed inermous spineless thornless prickleless bristleless spinulescent spinosulous aculeolous stinging urent
nettlelike
"""

NOUNS = """
tomentose = tomentum tomento tomenti tomenta; pubescent = pubescence pubescentia pubescencia pube pubes pubescenza;
downy = down; hairy = indumentum indument indumento indumenta hairiness pelosity behaarung pilosite pilosidad
pilosidade haarkleid; pilose = pilosity; woolly = wool lana lanae lanugo lanugine; felted = felt filz; villous =
villosity; pruinose = bloom pruina reif pruine; farinose = farina meal; scurfy = scurf; hoary = hoariness; silky =
silkiness; velvety = velvetiness; cottony = cotton; floccose = floccus; ciliate = ciliation; strigose = strigosity;
hispid = hispidity; scabrous = scabridity; glaucous = glaucescence
"""

LATIN = """
glabrous = glaber glaberrimus calvus; glabrate = glabratus; glabrescent = glabrescens; subglabrous = glabriusculus
glabellus; naked = nudus; hairy = pilifer trichotus crinitus; pubescent = pubescens puber pubens; puberulous =
puberulus puberulens puberulentus; downy = pubiger; pilose = pilosus piliger; pilosulous = pilosulus pilosiusculus;
villous = villosus; villosulous = villosulus villosiusculus; woolly = lanatus lanosus lanuginosus lanigerus; cottony =
gossypinus bombycinus xylinus; floccose = floccosus; tomentose = tomentosus; tomentellous = tomentellus tomentulosus;
velvety = velutinus holosericeus; silky = sericeus sericans sericatus bombyceus; cobwebby = araneosus araneus
arachnoideus; strigose = strigosus; strigillose = strigillosus strigulosus; hirsute = hirsutus; hirsutulous =
hirsutulus hirsutiusculus; hirtellous = hirtellus; hirsute = hirtus; hispid = hispidus; hispidulous = hispidulus;
bristly = setosus setifer setiger; ciliate = ciliatus cilifer; ciliolate = ciliolatus; bearded = barbatus barbiger;
beardless = imberbis; comose = comosus comatus; plumose = plumosus; hoary = incanus canus; canescent = canescens
incanescens; lepidote = lepidotus lepidosus; scurfy = furfuraceus leprosus; scaly = squamosus; chaffy = paleaceus;
eglandular = eglandulosus eglandularis; glandular = glandulosus glandularis glandulifer glanduliger glanduloseus;
viscid = viscidus viscosus; sticky = glutinosus; pruinose = pruinosus pruinatus; glaucous = glaucus glaucinus;
glaucescent = glaucescens; farinose = farinosus; mealy = farinaceus; punctate = punctatus; dotted = punctulatus; smooth
= laevis levis laevigatus; rough = asper asperatus asperulus; scabrous = scaber scabratus; scabrid = scabridus;
scaberulous = scaberulus scabriusculus; wrinkled = rugatus; rugose = rugosus; rugulose = rugulosus; verrucose =
verrucosus; tuberculate = tuberculatus tuberculosus; reticulate = reticulatus; furrowed = exaratus; sulcate = sulcatus;
striate = striatus; grooved = canaliculosus; veined = venosus venatus; nerved = nervosus nervatus; veinless = avenius
evenius enervis enervius; shining = nitidus nitens lucens splendens; glossy = lucidus lucidulus; polished = politus
vernicosus; dull = opacus impolitus; prickly = aculeatus; spiny = spinosus spinifer spiniger; unarmed = inermis; armed
= armatus; stinging = urens; papillose = papillosus papillatus papillifer; muricate = muricatus; echinate = echinatus;
warty = verrucatus; squamulose = squamulosus; resinous = resinosus resinifer; waxy = ceraceus cereus; striolate =
striolatus; lineate = lineatus; pitted = foveatus; cracked = rimosus; granular = granulosus granulatus granularis;
reticulate-veined = reticulatovenosus; bare = nudatus
"""
