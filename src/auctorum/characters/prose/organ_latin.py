"""Latin words for plant structures: the English name, then nominative/genitive where the declension needs it."""

NOUNS = """
leaf: folium phyllum phylloma/phyllomatis
leaflet: foliolum
frond: frons/frondis
pinna: pinna
pinnule: pinnula
petiole: petiolus
petiolule: petiolulus petiolellus
stipule: stipula
stipel: stipella
stipe: stipes/stipitis
phyllode: phyllodium
cladode: cladodium cladophyllum phyllocladium
sheath: vagina vaginula
ligule: ligula
auricle: auricula
ocrea: ocrea ochrea
ochreola: ocreola ochreola
pulvinus: pulvinus
rachis: rachis/rachidis rhachis/rhachidis rachis rhachis
rachilla: rachilla rhachilla
cataphyll: cataphyllum cataphylla/cataphyllae
prophyll: prophyllum
bladder: vesicula
pitcher: ascidium
tendril: cirrus cirrhus capreolus
rosette: rosula
needle: acus/acus
fascicle: fasciculus
scale: squama lepis/lepidis
squamule: squamula squamella
spine: spina acicula
prickle: aculeus
glochid: glochidium
areole: areola
stem: caulis cauliculus
culm: culmus
scape: scapus
shoot: turio/turionis surculus propago/propaginis
branch: ramus
branchlet: ramulus ramellus ramusculus ramunculus
trunk: truncus
node: nodus
internode: internodium
bud: gemma alabastrum alabaster/alabastri
bulbil: bulbillus bulbulus
bark: cortex/corticis
wood: lignum
pith: medulla
crown: cacumen/cacuminis
root: radix/radicis
rootlet: radicula fibrilla
rhizome: rhizoma/rhizomatis
caudex: caudex/caudicis
corm: cormus bulbotuber/bulbotuberis!
tuber: tuber/tuberis!
tubercule: tuberidium
bulb: bulbus
tunic: tunica
stolon: stolo/stolonis
runner: sarmentum flagellum
sucker: soboles
innovation: innovatio/innovationis
pseudobulb: pseudobulbus
lenticel: lenticella
stoma: stoma/stomatis
inflorescence: inflorescentia
infructescence: infructescentia
raceme: racemus
panicle: panicula
cyme: cyma/cymae cyma/cymatis
cymule: cymula
umbel: umbella
umbellule: umbellula
corymb: corymbus
spike: spica
spikelet: spicula spiculum
spadix: spadix/spadicis
spathe: spatha
spathella: spathella
catkin: amentum iulus
thyrse: thyrsus
verticillaster: verticillaster/verticillastri
glomerule: glomerulus glomus/glomeris
whorl: verticillus
head: caput/capitis
capitulum: capitulum anthodium calathidium calathium
cyathium: cyathium
syconium: synconium syconium
strobilus: strobilus
cone: conus
peduncle: pedunculus
pedicel: pedicellus pediculus
gynophore: gynophorum
androgynophore: androgynophorum
carpophore: carpophorum
torus: torus
bract: bractea
bracteole: bracteola
involucre: involucrum periclinium
involucel: involucellum
phyllary: phyllarium
receptacle: receptaculum clinanthium
pappus: pappus
ray: radius
disc: discus
floret: flosculus floscellus
flower: flos/floris
cupule: cupula
calyx: calyx/calycis calix/calicis
epicalyx: epicalyx/epicalycis calyculus caliculus
sepal: sepalum
corolla: corolla
petal: petalum
tepal: tepalum
perianth: perianthium perigonium
hypanthium: hypanthium
calyptra: calyptra
operculum: operculum
corona: corona
coronula: coronula
labellum: labellum
lip: labium
galea: galea
standard: vexillum
stamen: stamen/staminis
staminode: staminodium
anther: anthera
theca: theca
filament: filamentum filum
connective: connectivum
pollen: pollen/pollinis!
pollinium: pollinium
pollinarium: pollinarium
caudicle: caudicula
viscidium: viscidium
retinaculum: retinaculum
translator: translator/translatoris
corpusculum: corpusculum
gynostegium: gynostegium
column: columna gynostemium columella
rostellum: rostellum
mentum: mentum
androecium: androecium androeceum
gynoecium: gynoecium gynaeceum gynoeceum
pistil: pistillum
pistillode: pistillodium
carpel: carpellum carpidium carpophyllum
ovary: ovarium germen/germinis
ovule: ovulum
style: stylus
stylopodium: stylopodium
stigma: stigma/stigmatis
locule: loculus loculamentum
placenta: placenta
septum: septum dissepimentum
replum: replum
nectary: nectarium
funicle: funiculus
chalaza: chalaza
fruit: fructus/fructus
fruitlet: fructiculus
capsule: capsula
berry: bacca
drupe: drupa
drupelet: drupeola
samara: samara
silique: siliqua
silicle: silicula
follicle: folliculus
schizocarp: schizocarpium
mericarp: mericarpium
coccus: coccus
nutlet: nucula
nut: nux/nucis
pyrene: pyrena
putamen: putamen/putaminis
endocarp: endocarpium
mesocarp: mesocarpium
exocarp: exocarpium epicarpium
pericarp: pericarpium
aril: arillus arillum
caruncle: caruncula
strophiole: strophiola
elaiosome: elaiosoma/elaiosomatis
hilum: hilum
embryo: embryo/embryonis
cotyledon: cotyledon/cotyledonis
plumule: plumula
radicle: radicula
endosperm: endospermium
albumen: albumen/albuminis
testa: testa
seed: semen/seminis
achene: achenium achaenium akenium
cypsela: cypsela
caryopsis: caryopsis caryopsis/caryopsidis
utricle: utriculus
legume: legumen/leguminis
loment: lomentum
pome: pomum
anthocarp: anthocarpium
glume: gluma
lemma: lemma/lemmatis
palea: palea paleola
awn: arista
lodicule: lodicula
callus: callus
perigynium: perigynium
sorus: sorus
indusium: indusium
sporangium: sporangium
sporocarp: sporocarpium
spore: spora
sporophyll: sporophyllum
annulus: annulus
thallus: thallus
peristome: peristomium
seta: seta

gemma: gemmula
ramentum: ramentum
latex: latex/laticis
lobe: lobulus lobus lacinia lacinula
tube: tubus
tooth: dens/dentis
denticle: denticulus
serration: serratura
crenation: crena crenatura
crenule: crenula
rib: jugum
midrib: costa
vein: nervus vena
veinlet: venula nervulus nervillus
spot: macula
blotch: litura
band: fascia
zone: zona
ring: anulus
eye: oculus
hair: pilus indumentum tomentum pubes  crinis villus trichoma/trichomatis
bristle: setula
cilium: cilium
gland: glandula
papilla: papilla
wart: verruca
tubercle: tuberculum
pustule: pustula
scar: cicatrix/cicatricis cicatricula
wool: lana
beard: barba
fimbria: fimbria
margin: margo/marginis ora
apex: apex/apicis
base: basis fundus
body: corpus/corporis
beak: rostrum
throat: faux/faucis
mouth: ostium orificium
claw: unguis
limb: limbus
blade: lamina
axis: axis
valve: valva valvula
wing: ala
crest: crista
surface: pagina facies/faciei superficies/superficiei
back: dorsum
segment: segmentum articulus
division: divisio/divisionis partitio/partitionis
dot: punctum
keel: carina
end: extremitas/extremitatis
centre: centrum
sinus: sinus/sinus
groove: sulcus
cleft: fissura rima
mucro: mucro/mucronis
apiculum: apiculum apiculus
cusp: cuspis/cuspidis
horn: cornu/cornus corniculum
spur: calcar/calcaris
arm: brachium
tail: cauda
appendage: appendix/appendicis appendicula
process: processus/processus
swelling: gibbus gibba
sac: saccus sacculus
pit: fovea foveola
lacuna: lacuna
neck: collum
pore: porus
suture: sutura
commissure: commissura
vitta: vitta
stria: stria
fold: plica ruga
lamella: lamella
hook: hamus uncus
flesh: sarcocarpium
pulp: pulpa
wall: paries/parietis
membrane: membrana
epidermis: epidermis/epidermidis
cuticle: cuticula
series: series/seriei
row: ordo/ordinis
plant: planta herba frutex/fruticis fruticulus suffrutex/suffruticis suffruticulus arbor/arboris arbuscula arbustum
plant: arbustulum gramen/graminis filix/filicis caespes/caespitis cespes/cespitis liana scandens/scandentis muscus
habitat: silva sylva pratum rupes saxum mons/montis collis campus locus palus/paludis arena litus/litoris
habitat: littus/littoris
habitat: ripa fluvius flumen/fluminis rivus rivulus dumetum nemus/nemoris ager/agri hortus terra desertum ericetum
habitat: pascuum lacus/lacus fossa insula vallis regio/regionis convallis clivus declivitas/declivitatis alpis
habitat: graminetum nemusculum sepes fruticetum saltus/saltus humus steppa uligo/uliginis
habitat: habitatio/habitationis sabulum lucus dumus vepretum pinetum quercetum
"""

# Single forms that do not follow: sides told from `latus` (wide), ribs from the one midrib, a mouth from `ora` (edge).
FORMS = """
bristle: setae setis setarum setas
side: latere lateri lateris lateribus
rib: costis costarum costulae costula costulis
mouth: ore oris
throat: faucium
base: basin basim baseos
"""
