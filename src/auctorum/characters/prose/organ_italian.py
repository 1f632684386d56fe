"""Italian words for plant structures, singular: the English name, a colon, and the words."""

NOUNS = """
leaf: foglia
leaflet: fogliolina
frond: fronda
petiole: picciolo
stipule: stipola
sheath: guaina
ligule: ligula
tendril: viticcio
scale: squama
spine: spina
prickle: aculeo
stem: fusto
culm: culmo
scape: scapo
branch: ramo
branchlet: rametto ramoscello
trunk: tronco
node: nodo
internode: internodo
bud: gemma boccio
bark: corteccia
root: radice
rhizome: rizoma
tuber: tubero
bulb: bulbo
stolon: stolone
inflorescence: infiorescenza
raceme: racemo
panicle: pannocchia
umbel: ombrella
corymb: corimbo
spike: spiga
spikelet: spighetta
spathe: spata
catkin: amento
whorl: verticillo
capitulum: capolino
cone: cono
peduncle: peduncolo
pedicel: pedicello
receptacle: ricettacolo
bract: brattea
bracteole: bratteola
involucre: involucro
pappus: pappo
flower: fiore
calyx: calice
sepal: sepalo
corolla: corolla
petal: petalo
tepal: tepalo
perianth: perianzio perigonio
labellum: labello
lip: labbro
standard: vessillo
stamen: stame
anther: antera
filament: filamento
carpel: carpello
ovary: ovario
ovule: ovulo
style: stilo
stigma: stigma stimma
locule: loggia
nectary: nettario
fruit: frutto
capsule: capsula
berry: bacca
drupe: drupa
samara: samara
silique: siliqua
silicle: siliquetta
follicle: follicolo
mericarp: mericarpo
nut: noce
aril: arillo
seed: seme
achene: achenio
caryopsis: cariosside
legume: legume
pod: baccello
glume: gluma
awn: resta
sorus: soro
sporangium: sporangio
lobe: lobulo lobo
tube: tubo
tooth: dente
rib: costola
vein: nervo nervatura vena
spot: macchia
hair: peli tomento
bristle: setola
gland: ghiandola
scar: cicatrice
margin: margine bordo
apex: apice
tip: punta
base: base
beak: becco
throat: fauce
claw: unghia
blade: lamina lembo
axis: asse
valve: valva
wing: ala
surface: superficie
face: faccia
segment: segmento
keel: carena
spur: sperone
appendage: appendice
latex: lattice
plant: pianta erba albero alberello arbusto cespuglio suffrutice felce liana
habitat: bosco prato rupe pascolo roccia palude duna pendio campo siepe brughiera torbiera spiaggia monte
"""
