"""French words for plant structures, singular: the English name, a colon, and the words."""

NOUNS = """
leaf: feuille
leaflet: foliole
frond: fronde
pinna: penne pinne
pinnule: pinnule
petiole: pétiole
petiolule: pétiolule
stipule: stipule
stipel: stipelle
sheath: gaine
ligule: ligule
auricle: oreillette auricule
tendril: vrille
rosette: rosette
needle: aiguille
fascicle: fascicule faisceau
scale: écaille
spine: épine
prickle: aiguillon
stem: tige
culm: chaume
scape: hampe
shoot: pousse turion
branch: branche
branchlet: rameau ramule ramille
trunk: tronc
node: noeud
internode: entrenoeud
bud: bourgeon bouton
bulbil: bulbille
bark: écorce
pith: moelle
root: racine
rootlet: radicelle
rhizome: rhizome
rootstock: souche
tuber: tubercule
bulb: bulbe
corm: corme
stolon: stolon
pseudobulb: pseudobulbe
inflorescence: inflorescence
raceme: grappe racème
panicle: panicule
cyme: cyme
umbel: ombelle
umbellule: ombellule
corymb: corymbe
spike: épi
spikelet: épillet
spadix: spadice
spathe: spathe
catkin: chaton
thyrse: thyrse
glomerule: glomérule
whorl: verticille
capitulum: capitule
cone: cône
strobilus: strobile
peduncle: pédoncule
pedicel: pédicelle
receptacle: réceptacle
bract: bractée
bracteole: bractéole
involucre: involucre
involucel: involucelle
phyllary: phyllaire
pappus: aigrette
floret: fleuron
flower: fleur
cupule: cupule
calyx: calice
epicalyx: épicalice calicule
sepal: sépale
corolla: corolle
petal: pétale
tepal: tépale
perianth: périanthe périgone
hypanthium: hypanthe hypanthium
labellum: labelle
lip: lèvre
hood: casque
standard: étendard
stamen: étamine
staminode: staminode
anther: anthère
theca: thèque
filament: filet
connective: connectif
pollinium: pollinie
column: colonne gynostème
androecium: androcée
gynoecium: gynécée
pistil: pistil
carpel: carpelle
ovary: ovaire
ovule: ovule
style: style
stigma: stigmate
locule: loge
septum: cloison
nectary: nectaire
disc: disque
fruit: fruit
capsule: capsule
berry: baie
drupe: drupe
samara: samare
silique: silique
silicle: silicule
follicle: follicule
mericarp: méricarpe
schizocarp: schizocarpe
coccus: coque
nutlet: nucule
nut: noix
stone: noyau
pericarp: péricarpe
endocarp: endocarpe
exocarp: exocarpe
aril: arille
caruncle: caroncule
hilum: hile
embryo: embryon
cotyledon: cotylédon
endosperm: albumen
seed: graine
achene: akène achaine achène
caryopsis: caryopse
utricle: utricule
legume: légume
pod: gousse
glume: glume
lemma: lemme glumelle
palea: paléole paillette
awn: arête
perigynium: périgyne
sorus: sore
indusium: indusie
sporangium: sporange
lobe: lobe lobule lanière lacinie
tube: tube
tooth: dent denticule
vein: nervure veine
veinlet: nerville veinule
spot: tache macule
stripe: strie rayure
band: bande
ring: anneau
hair: poil indument tomentum pubescence
cilium: cil
bristle: soie
gland: glande
papilla: papille
scar: cicatrice
margin: marge bord
apex: sommet apex
tip: pointe extrémité
base: base
body: corps
beak: bec
claw: onglet
blade: limbe
axis: axe
valve: valve
wing: aile
crest: crête
surface: surface
face: face
segment: segment
division: division
dot: point
keel: carène
sinus: sinus
groove: sillon
mucro: mucron
horn: corne
spur: éperon
appendage: appendice
sac: sac
pore: pore
fold: pli
pulp: pulpe
flesh: chair
series: série
row: rang rangée
plant: plante herbe arbre arbuste arbrisseau liane fougère graminée buisson palmier touffe
plant: arbuscule épiphyte vivace
habitat: forêt bois prairie pâturage champ falaise rocher pente marais tourbière lande dune coteau montagne rivière
habitat: ruisseau lac rivage savane désert chemin haie bosquet clairière pelouse lieu sol île éboulis étang garrigue
"""
