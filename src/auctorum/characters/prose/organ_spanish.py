"""Spanish words for plant structures, singular: the English name, a colon, and the words."""

NOUNS = """
leaf: hoja
leaflet: folíolo hojuela foliolo
frond: fronde
pinnule: pínula
pinna: pina
petiole: pecíolo peciolo rabillo
petiolule: peciólulo
stipule: estípula
stipel: estipela
stipe: estípite
sheath: vaina
ligule: lígula
auricle: aurícula
tendril: zarcillo
rosette: roseta
fascicle: fascículo
scale: escama
spine: espina
prickle: aguijón acúleo
areole: aréola
stem: tallo
culm: caña culmo
scape: escapo bohordo
shoot: brote vástago renuevo retoño
branch: rama
branchlet: ramita ramilla ramillo ramificación
trunk: tronco
node: nudo
internode: entrenudo internodo
bud: yema botón capullo
bulbil: bulbillo
bark: corteza
wood: madera
pith: médula
crown: copa
root: raíz
rhizome: rizoma
rootstock: cepa
tuber: tubérculo
bulb: bulbo
tunic: túnica
corm: cormo
stolon: estolón
pseudobulb: pseudobulbo seudobulbo
rachis: raquis
rachilla: raquilla
inflorescence: inflorescencia
infructescence: infrutescencia infructescencia
raceme: racimo
panicle: panícula panoja
cyme: cima
umbel: umbela
umbellule: umbélula
corymb: corimbo
spike: espiga
spikelet: espiguilla
spadix: espádice
spathe: espata
catkin: amento
thyrse: tirso
glomerule: glomérulo
whorl: verticilo
capitulum: capítulo
head: cabezuela
cyathium: ciatio
cone: cono
strobilus: estróbilo
peduncle: pedúnculo
pedicel: pedicelo
receptacle: receptáculo
bract: bráctea
bracteole: bractéola bracteola
involucre: involucro
involucel: involucelo
phyllary: filaria filario
pappus: vilano papo
floret: flósculo
flower: flor
cupule: cúpula
calyx: cáliz
epicalyx: epicáliz calículo
sepal: sépalo
corolla: corola
petal: pétalo
tepal: tépalo
perianth: perianto periantio perigonio
hypanthium: hipanto hipantio
calyptra: caliptra
operculum: opérculo
labellum: labelo
lip: labio
standard: estandarte vexilo
stamen: estambre
staminode: estaminodio
anther: antera
theca: teca
filament: filamento
connective: conectivo
pollen: polen
pollinium: polinio
column: columna ginostemo
androecium: androceo
gynoecium: gineceo
pistil: pistilo
pistillode: pistilodio
carpel: carpelo
ovary: ovario
ovule: óvulo rudimento
style: estilo
stylopodium: estilopodio
stigma: estigma
locule: lóculo
septum: septo tabique
nectary: nectario
fruit: fruto
capsule: cápsula
berry: baya
drupe: drupa
samara: sámara
silique: silicua
silicle: silícula
follicle: folículo
schizocarp: esquizocarpo
mericarp: mericarpo
coccus: coco
nutlet: núcula nuececilla
nut: nuez
pyrene: pireno
pericarp: pericarpo
endocarp: endocarpo
exocarp: exocarpo
mesocarp: mesocarpo
aril: arilo
caruncle: carúncula
hilum: hilo
embryo: embrión
cotyledon: cotiledón
endosperm: endospermo
seed: semilla
achene: aquenio
cypsela: cipsela
caryopsis: cariopsis cariópside
utricle: utrículo
legume: legumbre
loment: lomento
grain: grano
glume: gluma
lemma: lema
palea: pálea
awn: arista
callus: callo
sorus: soro
indusium: indusio
sporangium: esporangio
spore: espora
lobe: lóbulo lóbulo lobo lacinia
tube: tubo
tooth: diente
denticle: dientecillo dentículo
rib: costilla
vein: nervio vena nervadura nerviación
spot: mancha
stripe: raya
band: banda franja
ring: anillo
hair: pelos pelillo vello indumento tomento pubescencia
trichome: tricoma
cilium: cilio
bristle: cerda
seta: seta
gland: glándula
papilla: papila
scar: cicatriz
margin: margen borde
apex: ápice
tip: punta
base: base
body: cuerpo
beak: pico rostro
throat: garganta fauce
mouth: boca
claw: uñuela
blade: lámina
axis: eje
valve: valva
wing: ala
crest: cresta
surface: superficie
upper surface: haz
lower surface: envés
side: lado
face: cara
back: dorso
segment: segmento
division: división
dot: punto
keel: quilla
centre: centro
end: extremo
sinus: seno
groove: surco
mucro: mucrón
horn: cuerno
spur: espolón
appendage: apéndice
sac: saco
pore: poro
fold: pliegue
flesh: pulpa
series: serie
row: fila hilera
membrane: membrana
wall: pared
latex: látex
plant: planta hierba yerba árbol arbolito arbolillo arbusto arbustillo arbustito subarbusto sufrútice mata trepadora
plant: bejuco enredadera liana helecho gramínea matita cojín césped herbácea palmera palma epífita
habitat: matorral bosque selva pradera prado ladera roca acantilado pastizal sabana ribera cerro monte quebrada arenal
habitat: páramo puna desierto pantano ciénaga laguna lago arroyo montaña playa campo suelo duna turbera brezal encinar
habitat: pinar robledal cordillera valle orilla camino lugar cuneta roquedo pedregal pasto estepa terreno isla
"""
