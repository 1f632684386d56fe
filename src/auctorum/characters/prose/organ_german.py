"""German words for plant structures: singular/plural, and what compounds are made of (`Kelch` + `Zipfel`)."""

NOUNS = """
leaf: Blatt/Blätter Laubblatt/Laubblätter
leaflet: Blättchen Fiederblättchen Teilblättchen Teilblatt/Teilblätter Teilblättchen
frond: Wedel
pinna: Fieder/Fiedern
pinnule: Fiederchen
petiole: Blattstiel/Blattstiele
petiolule: Blättchenstiel/Blättchenstiele
stipule: Nebenblatt/Nebenblätter
sheath: Scheide/Scheiden
leaf sheath: Blattscheide/Blattscheiden
ligule: Blatthäutchen Ligula/Ligulae
auricle: Öhrchen
ocrea: Tute/Tuten Ochrea/Ochreae
tendril: Ranke/Ranken
rosette: Rosette/Rosetten Blattrosette/Blattrosetten Grundrosette/Grundrosetten
needle: Nadel/Nadeln
fascicle: Büschel Bündel
scale: Schuppe/Schuppen
spine: Dorn/Dornen
prickle: Stachel/Stacheln
stem: Stängel Stengel
culm: Halm/Halme
scape: Schaft/Schäfte
shoot: Trieb/Triebe Spross/Sprosse Sproß/Sprosse
branch: Ast/Äste
branchlet: Zweig/Zweige Zweiglein
trunk: Stamm/Stämme
node: Knoten
internode: Internodium/Internodien Stängelglied/Stängelglieder
bud: Knospe/Knospen
bulbil: Brutzwiebel/Brutzwiebeln Bulbille/Bulbillen
bark: Rinde/Rinden Borke/Borken
wood: Holz/Hölzer
pith: Mark
crown: Baumkrone/Baumkronen
root: Wurzel/Wurzeln
taproot: Pfahlwurzel/Pfahlwurzeln
rhizome: Rhizom/Rhizome Wurzelstock/Wurzelstöcke Erdspross/Erdsprosse
tuber: Knolle/Knollen
bulb: Zwiebel/Zwiebeln
stolon: Ausläufer
pseudobulb: Pseudobulbe/Pseudobulben
inflorescence: Blütenstand/Blütenstände Infloreszenz/Infloreszenzen
infructescence: Fruchtstand/Fruchtstände
raceme: Traube/Trauben
panicle: Rispe/Rispen
cyme: Trugdolde/Trugdolden Zyme/Zymen
umbel: Dolde/Dolden
umbellule: Döldchen
corymb: Doldentraube/Doldentrauben Schirmtraube/Schirmtrauben Schirmrispe/Schirmrispen
spike: Ähre/Ähren
spikelet: Ährchen
spadix: Kolben
spathe: Spatha/Spathen
catkin: Kätzchen
whorl: Quirl/Quirle Wirtel
capitulum: Körbchen Korb/Körbe Blütenkorb/Blütenkörbe
head: Köpfchen Kopf/Köpfe Blütenkopf/Blütenköpfe Blütenköpfchen
cone: Zapfen
peduncle: Blütenstandsstiel/Blütenstandsstiele Ährenstiel/Ährenstiele Köpfchenstiel/Köpfchenstiele
pedicel: Blütenstiel/Blütenstiele Blütenstielchen Fruchtstiel/Fruchtstiele
receptacle: Blütenboden/Blütenböden Korbboden/Korbböden
bract: Tragblatt/Tragblätter Deckblatt/Deckblätter Hochblatt/Hochblätter Braktee/Brakteen
bracteole: Vorblatt/Vorblätter
involucre: Hülle/Hüllen Hüllkelch/Hüllkelche
involucel: Hüllchen
phyllary: Hüllblatt/Hüllblätter Hüllschuppe/Hüllschuppen
pappus: Pappus
ray: Strahl/Strahlen Doldenstrahl/Doldenstrahlen
ray floret: Zungenblüte/Zungenblüten Strahlenblüte/Strahlenblüten Randblüte/Randblüten
disc floret: Röhrenblüte/Röhrenblüten Scheibenblüte/Scheibenblüten
disc: Scheibe/Scheiben Diskus/Disken
flower: Blüte/Blüten Blume/Blumen
flower bud: Blütenknospe/Blütenknospen
cupule: Fruchtbecher
calyx: Kelch/Kelche
epicalyx: Außenkelch/Außenkelche Nebenkelch/Nebenkelche
sepal: Kelchblatt/Kelchblätter Sepal/Sepalen
corolla: Krone/Kronen Blütenkrone/Blütenkronen Blumenkrone/Blumenkronen
petal: Kronblatt/Kronblätter Blütenblatt/Blütenblätter Blumenblatt/Blumenblätter Petal/Petalen Kronenblatt/Kronenblätter
tepal: Perigonblatt/Perigonblätter Tepal/Tepalen Blütenhüllblatt/Blütenhüllblätter
perianth: Blütenhülle/Blütenhüllen Perigon/Perigone Perianth/Perianthe
hypanthium: Blütenbecher Achsenbecher
corona: Nebenkrone/Nebenkronen
lip: Lippe/Lippen
upper lip: Oberlippe/Oberlippen
lower lip: Unterlippe/Unterlippen
standard: Fahne/Fahnen
keel: Schiffchen Kiel/Kiele
stamen: Staubblatt/Staubblätter Staubgefäß/Staubgefäße
staminode: Staminodium/Staminodien
anther: Staubbeutel Anthere/Antheren
filament: Staubfaden/Staubfäden Filament/Filamente
pollen: Blütenstaub
column: Säule/Säulen
carpel: Fruchtblatt/Fruchtblätter Karpell/Karpelle
ovary: Fruchtknoten
ovule: Samenanlage/Samenanlagen
style: Griffel
stigma: Narbe/Narben
locule: Fach/Fächer
septum: Scheidewand/Scheidewände
nectary: Nektarium/Nektarien Honigdrüse/Honigdrüsen
fruit: Frucht/Früchte
fruitlet: Früchtchen
capsule: Kapsel/Kapseln
berry: Beere/Beeren
drupe: Steinfrucht/Steinfrüchte
silique: Schote/Schoten
silicle: Schötchen
follicle: Balgfrucht/Balgfrüchte Balg/Bälge
mericarp: Teilfrucht/Teilfrüchte
nutlet: Nüsschen Klause/Klausen
nut: Nuss/Nüsse
stone: Steinkern/Steinkerne
aril: Arillus/Arilli Samenmantel/Samenmäntel
cotyledon: Keimblatt/Keimblätter
embryo: Keimling/Keimlinge
seed: Same/Samen Samen
achene: Achäne/Achänen
samara: Flügelfrucht/Flügelfrüchte
caryopsis: Karyopse/Karyopsen
grain: Korn/Körner
utricle: Schlauch/Schläuche
legume: Hülse/Hülsen
glume: Hüllspelze/Hüllspelzen
lemma: Deckspelze/Deckspelzen
palea: Vorspelze/Vorspelzen Spreublatt/Spreublätter Spreuschuppe/Spreuschuppen
awn: Granne/Grannen
perigynium: Fruchtschlauch/Fruchtschläuche
sorus: Sorus/Sori
indusium: Schleier
sporangium: Sporangium/Sporangien
spore: Spore/Sporen
lobe: Lappen Zipfel
lobule: Läppchen
tube: Röhre/Röhren
tooth: Zahn/Zähne
denticle: Zähnchen
rib: Rippe/Rippen
midrib: Mittelnerv/Mittelnerven Mittelrippe/Mittelrippen Hauptnerv/Hauptnerven
lateral vein: Seitennerv/Seitennerven
vein: Nerv/Nerven Ader/Adern
spot: Fleck/Flecken Fleck/Flecke
stripe: Streifen Streif/Streife
ring: Ring/Ringe
hair: Haar/Haare Behaarung/Behaarungen Indument/Indumente
cilium: Wimper/Wimpern
bristle: Borste/Borsten
gland: Drüse/Drüsen
wart: Warze/Warzen
tubercle: Höcker
scar: Blattnarbe/Blattnarben
margin: Rand/Ränder
apex: Spitze/Spitzen
base: Grund/Gründe Basis/Basen
beak: Schnabel/Schnäbel
throat: Schlund/Schlünde
claw: Nagel/Nägel
limb: Saum/Säume
blade: Spreite/Spreiten
axis: Achse/Achsen Spindel/Spindeln
valve: Klappe/Klappen
wing: Flügel
surface: Oberfläche/Oberflächen Fläche/Flächen
upper surface: Oberseite/Oberseiten
lower surface: Unterseite/Unterseiten
side: Seite/Seiten
back: Rücken
segment: Abschnitt/Abschnitte Segment/Segmente
centre: Mitte/Mitten
furrow: Furche/Furchen Rille/Rillen
spur: Sporn/Sporne Sporn/Sporen
appendage: Anhängsel Anhang/Anhänge
pore: Pore/Poren
flesh: Fruchtfleisch
row: Reihe/Reihen
stalk: Stiel/Stiele
latex: Milchsaft/Milchsäfte
plant: Pflanze/Pflanzen Baum/Bäume Bäumchen Strauch/Sträucher Halbstrauch/Halbsträucher Zwergstrauch/Zwergsträucher
plant: Kraut/Kräuter Staude/Stauden Gras/Gräser Farn/Farne Liane/Lianen Kletterpflanze/Kletterpflanzen Polster
habitat: Wald/Wälder Wiese/Wiesen Fels/Felsen Hang/Hänge Moor/Moore Heide/Heiden Düne/Dünen Ufer
habitat: Gebüsch/Gebüsche Sumpf/Sümpfe
habitat: Acker/Äcker Feld/Felder Trockenrasen Rasen Steppe/Steppen Weide/Weiden Schutt Geröll/Gerölle
habitat: Bach/Bäche See/Seen
habitat: Fluss/Flüsse Felsspalte/Felsspalten Gebirge Berg/Berge Wegrand/Wegränder Hecke/Hecken Sand/Sande Boden/Böden
"""

# A compound of a whole and a part is the part of the whole: `Kronröhre`, `Blattrand`.
WHOLES = """
leaf: Blatt Laubblatt Spreiten
leaflet: Blättchen Fieder
calyx: Kelch
corolla: Kron Kronen Blumenkron Blütenkron Blüten
perianth: Perigon
sepal: Kelchblatt
petal: Kronblatt Blütenblatt
phyllary: Hüllblatt
stem: Stängel Stengel
seed: Samen
fruit: Frucht
capsule: Kapsel
achene: Achänen
style: Griffel
stigma: Narben
scale: Schuppen
branch: Ast
spike: Ähren
root: Wurzel
sheath: Scheiden
"""

PARTS = """
lobe: Zipfel Lappen
tube: Röhre/Röhren
tooth: Zahn/Zähne
margin: Rand/Ränder
apex: Spitze/Spitzen
base: Grund/Gründe Basis/Basen
vein: Nerv/Nerven Ader/Adern
midrib: Mittelnerv/Mittelnerven
blade: Spreite/Spreiten
limb: Saum/Säume
throat: Schlund/Schlünde
surface: Oberfläche/Oberflächen
segment: Abschnitt/Abschnitte
rib: Rippe/Rippen
wing: Flügel
beak: Schnabel/Schnäbel
valve: Klappe/Klappen
hair: Haar/Haare
branch: Ast/Äste
axis: Achse/Achsen Spindel/Spindeln
scale: Schuppe/Schuppen
upper surface: Oberseite/Oberseiten
lower surface: Unterseite/Unterseiten
"""
