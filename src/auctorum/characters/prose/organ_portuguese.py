"""Portuguese words for plant structures, singular: the English name, a colon, and the words."""

NOUNS = """
leaf: folha
leaflet: folíolo
frond: fronde
pinna: pina
pinnule: pínula
petiole: pecíolo
petiolule: peciólulo
stipule: estípula
stipe: estípite estipe
sheath: bainha
ligule: lígula
auricle: aurícula
tendril: gavinha
rosette: roseta
fascicle: fascículo
scale: escama
spine: espinho
prickle: acúleo
areole: aréola
stem: caule haste
culm: colmo
scape: escapo
shoot: broto
branch: ramo
branchlet: râmulo raminho ramificação
trunk: tronco
internode: entrenó
bud: gema botão
bark: casca córtex
wood: madeira
pith: medula
crown: copa
root: raiz
rhizome: rizoma
tuber: tubérculo
bulb: bulbo
corm: cormo
stolon: estolão estolho
pseudobulb: pseudobulbo
rachis: raque ráquis
rachilla: ráquila
inflorescence: inflorescência
infructescence: infrutescência
raceme: racemo cacho
panicle: panícula
cyme: cima címula
umbel: umbela
corymb: corimbo
spike: espiga
spikelet: espigueta
spadix: espádice
spathe: espata
catkin: amento amentilho
thyrse: tirso
glomerule: glomérulo
whorl: verticilo
capitulum: capítulo
cyathium: ciátio
cone: cone
strobilus: estróbilo
peduncle: pedúnculo
pedicel: pedicelo
receptacle: receptáculo
bract: bráctea
bracteole: bractéola profilo
involucre: invólucro
phyllary: filária
pappus: papilho pápus
floret: flósculo
flower: flor
cupule: cúpula
calyx: cálice
epicalyx: epicálice calículo
sepal: sépala
corolla: corola
petal: pétala
tepal: tépala
perianth: perianto perigônio perigónio
hypanthium: hipanto hipanthium
labellum: labelo
lip: lábio
standard: estandarte vexilo
stamen: estame
staminode: estaminódio
anther: antera
theca: teca
filament: filete filamento
connective: conectivo
pollen: pólen
pollinium: polínia políneo
column: coluna
androecium: androceu
gynoecium: gineceu
pistil: pistilo
pistillode: pistilódio
carpel: carpelo
ovary: ovário
ovule: óvulo
style: estilete
stigma: estigma
locule: lóculo
septum: septo
nectary: nectário
fruit: fruto
capsule: cápsula
berry: baga
drupe: drupa
samara: sâmara
silique: síliqua
follicle: folículo
schizocarp: esquizocarpo
mericarp: mericarpo
coccus: coca
nutlet: núcula
nut: noz
pyrene: pirênio pireno
pericarp: pericarpo
endocarp: endocarpo
aril: arilo
caruncle: carúncula
hilum: hilo
embryo: embrião
cotyledon: cotilédone
endosperm: endosperma
seed: semente
achene: aquênio aquénio
cypsela: cipsela
caryopsis: cariopse
utricle: utrículo
legume: legume
pod: vagem
loment: lomento
glume: gluma
lemma: lema
palea: pálea
awn: arista
sorus: soro
indusium: indúsio
sporangium: esporângio
spore: esporo
lobe: lóbulo lobo lóbulo lacínia
tube: tubo
tooth: dente dentículo
rib: costela
vein: nervura veia nervação
spot: mancha mácula
stripe: listra estria
band: faixa
ring: anel
hair: pelos indumento tomento pubescência
trichome: tricoma
cilium: cílio
bristle: cerda
gland: glândula
papilla: papila
scar: cicatriz
margin: margem bordo borda
apex: ápice
tip: ponta
base: base
body: corpo
beak: bico rostro
throat: fauce garganta
claw: unha
blade: lâmina limbo
axis: eixo
valve: valva
wing: asa
crest: crista
surface: superfície
side: lado
face: face
back: dorso
segment: segmento
dot: ponto pontuação
keel: quilha
centre: centro
sinus: seio
groove: sulco
mucro: múcron
horn: corno
spur: esporão calcar cálcar
appendage: apêndice
sac: saco
pore: poro
fold: prega
pulp: polpa
series: série
row: fileira
membrane: membrana
latex: látex
plant: planta erva árvore arvoreta arbusto subarbusto trepadeira cipó liana feto samambaia palmeira gramínea epífita
plant: arvorezinha herbácea
habitat: floresta mata bosque cerrado campo caatinga restinga capoeira brejo pântano praia rocha encosta serra rio
habitat: prado solo afloramento capão duna savana montanha vereda charneca mato clareira lagoa costão paredão ilha
"""
