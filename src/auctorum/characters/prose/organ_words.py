"""English words for plant structures, growth forms and places of growth, in the singular.

`PLAIN`, `PARTS` and the names before a colon are the names of the trade; what follows a colon is another word for it.
A part or mark takes the name of its whole (`corolla tube`); a plain organ can be counted or measured alone.
"""

PLAIN = """
leaf leaflet frond pinna pinnule petiole petiolule petiolet stipule stipel stipe phyllode phylloclade cladode
cladophyll sheath ligule auricle ocrea ochreola pulvinus pulvinule rachis rachilla rachillet pseudopetiole
cataphyll prophyll bladder pitcher trap ascidium domatium tendril rosette needle fascicle microphyll megaphyll
sporophyll megasporophyll microsporophyll trophophyll scale squamule spine thorn prickle glochid areole
stem culm scape shoot branch branchlet trunk stump bole twig sprig cane node internode bud bulbil turion
bark periderm cork wood sapwood heartwood pith cortex cambium crown canopy root rootlet taproot rootstock radicle
pneumatophore haustorium velamen rhizoid rhizome caudex corm cormlet tuber tubercule bulb bulblet tunic stolon runner
sucker offset innovation pseudobulb pseudostem lenticel stoma hydathode brachyblast dolichoblast spur
inflorescence infructescence synflorescence conflorescence florescence paraclade raceme
panicle cyme cymule umbel corymb spike spikelet spadix spathe spathella catkin ament thyrse
truss verticillaster glomerule whorl head capitulum calathidium pseudanthium
cyathium cyathophyll syconium dichasium monochasium pleiochasium cincinnus rhipidium drepanium
bostryx strobilus cone conelet peduncle peduncule pedicel podium gynophore androgynophore androphore
carpophore gonophore thecaphore torus bract bracteole bractlet bracteolule involucre involucel phyllary
receptacle pappus ray disc floret flower floweret cupule cup
calyx epicalyx sepal corolla petal tepal perianth hypanthium
calyptra operculum lid corona coronula paracorolla labellum lip hood galea helmet standard banner fall
stamen staminode anther theca filament connective pollen pollinium pollinarium caudicle viscidium
retinaculum tegula translator corpusculum gynostegium gynostemium rostellum stelidium clinandrium mentum column
gynandrium androecium gynoecium pistil pistillode carpel pseudocarpel ovary ovule style stylode
stylopodium stylodium stigma locule placenta placentation septum replum dissepiment nectary nucellus integument funicle
funiculus micropyle chalaza raphe obturator elaiophore osmophore fruit fruitlet capsule berry drupe drupelet druplet
samara samaroid silique silicle follicle schizocarp
mericarp coccus nutlet nut nucule pyrene stone pit putamen endocarp mesocarp exocarp epicarp pericarp aril arillode
strophiole caruncle elaiosome hilum embryo cotyledon plumule hypocotyl epicotyl endosperm perisperm albumen testa tegmen
sarcotesta sclerotesta seed kernel achene cypsela caryopsis grain utricle legume pod loment lomentum craspedium pome hip
hesperidium pepo syncarp sorosis etaerio cremocarp carcerulus diaspore propagule seedling acorn glans gourd
cachrys anthocarp pseudocarp diclesium pyxidium pyxis cynarrhodion
glume lemma palea palet awn lodicule callus floscule coleoptile coleorhiza mesocotyl perigynium
sorus indusium pseudoindusium sporangium sporocarp spore microspore megaspore annulus elater synangium
gametophyte sporophyte prothallus thallus fiddlehead crozier ramentum paleole
peristome seta amphigastrium perichaetium antheridium archegonium
gemma paraphysis phyllid latex sap exudate resin juice mucilage nectar
areola phellem lignotuber xylopodium hibernaculum perula osteole ostiole trophosperm ear
"""

PARTS = """
lobe lobule tube tooth denticle serration crenation crenule rib midrib vein veinlet venation spot
stripe streak striation striole blotch fleck speckle band zone mark patch ring eye centre guide
hair trichome cilium bristle gland papilla wart tubercle pustule vesicle scar wool beard fringe fimbria tuft
tip margin border rim apex base body beak mouth throat claw limb blade axis valve wing crest
surface side face back flank segment division dot keel end top bottom
inside outside corner sinus incision cleft groove furrow channel ridge costule
mucro mucronule cusp apicule apiculum awnlet acumen arm horn tail appendage appendicule process
projection outgrowth protuberance swelling boss gibbosity sac pouch lacuna neck shoulder
cavity chamber pore slit suture commissure vitta stria rugosity fold plait pleat flange lamella
hook barb barbule spinule flesh pulp skin rind shell wall membrane epidermis cuticle layer coat
portion part section stalk stalklet series row rank tier cycle reticulation
"""

# Another word: what it is called here.
SYNONYMS = """
tip: point
leaf: lf lv foliage
leaflet: lft lflt foliole
flower: fl flr blossom
fruit: fr
inflorescence: infl inflor
seed: sd
spikelet: spklt
bract: bractea
bracteole: bracteola
stamen: stam
staminode: staminodium
anther: anth
stigma: stig
achene: ach akene achaene achenium akenium achaenium
capsule: caps
phyllary: phyll
receptacle: recept
pedicel: pedic footstalk flowerstalk
petiole: leafstalk
ocrea: ochrea
rachis: rhachis
rachilla: rhachilla
areole: areola
stoma: stomate
glochid: glochidium
silique: siliqua
silicle: silicula silicule
funicle: funiculus funicule
strobilus: strobile
thyrse: thyrsus
capitulum: capitule
head: flowerhead
glomerule: glomerulus
fascicle: fasciculus
umbellule: umbellet umbelet
perianth: perigone perigon perigonium
phyllode: phyllodium
sporangium: sporange
sporophyll: sporophyl
gynoecium: gynaecium gynecium
androecium: andraecium andrecium
standard: vexillum
awn: arista
locule: cell loculus loculament
disc: disk
carpel: carpid carpidium
loment: lomentum
bulb: bulbus
bulblet: bulbel
bulbil: bulbillus
shoot: surcule
corm: bulbotuber
tubercle: tuberculum
squamule: squamula
hair: tomentum indumentum indument pubescence vestiture
vein: nerve nervure
veinlet: nervule venule
midrib: midvein midnerve costa
margin: edge
centre: center
spot: macula maculation
fringe: fimbriation
limb: limbus
throat: faux
lobe: lacinia lacinule
wing: ala
keel: carina
tooth: denticulation dentation
crenation: crenature
blade: lamina leafblade
top: summit
lower surface: underside undersurface
upper surface: upperside uppersurface
"""

PLANT = """
plant tree treelet shrub shrublet subshrub undershrub suffrutex herb sedge rush climber liana liane vine twiner creeper
scrambler rambler annual biennial perennial epiphyte lithophyte geophyte parasite hemiparasite saprophyte halophyte
hydrophyte xerophyte helophyte therophyte chamaephyte phanerophyte mycoheterotroph mat cushion clump tussock hummock
carpet bush fern grass moss reed bamboo palm conifer cycad orchid weed sapling treeling pteridophyte liverwort forb
graminoid specimen habit
"""

HABITAT = """
habitat scrub scrubland woodland forest rainforest jungle prairie meadow grassland pasture lawn cliff rock boulder bog
slope dune savanna savannah steppe tundra desert swamp marsh fen heath heathland moor moorland mire thicket hedge
hedgerow clearing outcrop ledge crevice scree talus ravine gorge canyon gully gulley mountain hill hillside hilltop
mountainside valley river riverbank riverside stream streamside brook lake lakeside pond pool ditch shore seashore coast
beach strand estuary saltmarsh roadside wayside field copse coppice grove chaparral shrubland bushland wetland lowland
highland upland floodplain terrace escarpment plateau mesa moraine bank place soil sand gravel clay limestone sandstone
granite basalt serpentine serpentinite shingle peat plantation garden quarry island islet mangrove mallee puna paramo
cerrado caatinga fynbos maquis garrigue phrygana understorey understory locality site wasteland crater
woods plains flats sands foothill barrens alp pineland parkland everglade hammock arroyo glade waterfall
"""
