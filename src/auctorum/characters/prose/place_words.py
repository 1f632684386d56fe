"""Adjectives of position or subset: where on the plant an organ stands, which whorl, which sort of flower."""

# As they are in English.
ENGLISH = """
basal cauline lower upper middle mid inner outer uppermost lowermost innermost outermost topmost undermost radial
central lateral terminal distal proximal apical subterminal subapical submarginal marginal peripheral axillary
intermediate
fertile sterile pistillate staminate ray disc abaxial adaxial dorsal ventral ultimate penultimate primary secondary
tertiary quaternary median medial anterior posterior male female hermaphrodite hermaphroditic bisexual unisexual neuter
neutral free radical rameal ramal floral involucral subtending submersed submerged emersed emergent floating
aerial subterranean underground aquatic vegetative reproductive main principal external internal antesepalous
antepetalous antisepalous antipetalous epipetalous episepalous alternipetalous oppositipetalous
chasmogamous cleistogamous functional abortive rudimentary paired unpaired odd
interpetiolar intrapetiolar suprabasal infrabasal subbasal
"""

# Other words, in English: what they are called here.
SYNONYMS = {"disk": "disc", "exterior": "outer", "interior": "inner", "inferior": "lower", "superior": "upper"}

# Masculine nominative, all cases and genders being met.
LATIN = """
basal: basalis basilaris radicalis
cauline: caulinus
lower: inferior
upper: superior
middle: medius intermedius
median: medianus
inner: interior internus
outer: exterior externus
uppermost: supremus summus
lowermost: infimus
innermost: intimus
outermost: extimus
radial: radialis
central: centralis
lateral: lateralis
terminal: terminalis
axillary: axillaris
marginal: marginalis
apical: apicalis
distal: distalis
proximal: proximalis
fertile: fertilis
sterile: sterilis
pistillate: pistillatus pistilliger
staminate: staminatus staminiger
abaxial: abaxialis
adaxial: adaxialis
dorsal: dorsalis
ventral: ventralis
ultimate: ultimus
penultimate: penultimus
primary: primarius
secondary: secundarius
tertiary: tertiarius
anterior: anterior anticus
posterior: posterior posticus
male: masculus masculinus
female: femineus foemineus faemineus femininus
hermaphrodite: hermaphroditus
bisexual: bisexualis
unisexual: unisexualis
neuter: neuter
floral: floralis
rameal: rameus ramealis
involucral: involucralis
submersed: submersus demersus
floating: natans
principal: principalis
"""

# Masculine/feminine of Spanish and Portuguese (one form where both are alike); French feminine as an ending.
ROMANCE = {
    "es": """
basal: basal basilar radical
cauline: caulino/caulina caulinar
lower: inferior
upper: superior
middle: medio/media mediano/mediana
inner: interno/interna interior
outer: externo/externa exterior
radial: radial
central: central
lateral: lateral
terminal: terminal
axillary: axilar
marginal: marginal
apical: apical
distal: distal
proximal: proximal
fertile: fértil
sterile: estéril
pistillate: pistilado/pistilada
staminate: estaminado/estaminada
abaxial: abaxial
adaxial: adaxial
dorsal: dorsal
ventral: ventral
ultimate: último/última
primary: primario/primaria
secondary: secundario/secundaria
tertiary: terciario/terciaria
anterior: anterior
posterior: posterior
male: masculino/masculina
female: femenino/femenina
hermaphrodite: hermafrodita
floral: floral
involucral: involucral
principal: principal
""",
    "pt": """
basal: basal basilar radical
cauline: caulinar caulino/caulina
lower: inferior
upper: superior
middle: médio/média mediano/mediana
inner: interno/interna interior
outer: externo/externa exterior
radial: radial
central: central
lateral: lateral
terminal: terminal
axillary: axilar
marginal: marginal
apical: apical
distal: distal
proximal: proximal
fertile: fértil
sterile: estéril
pistillate: pistilado/pistilada
staminate: estaminado/estaminada
abaxial: abaxial
adaxial: adaxial
dorsal: dorsal
ventral: ventral
ultimate: último/última
primary: primário/primária
secondary: secundário/secundária
tertiary: terciário/terciária
male: masculino/masculina
female: feminino/feminina
hermaphrodite: hermafrodita
floral: floral
involucral: involucral
principal: principal
""",
    "fr": """
basal: basal/e basilaire radical/e
cauline: caulinaire
lower: inférieur/e
upper: supérieur/e
middle: moyen/ne médian/e
inner: interne intérieur/e
outer: externe extérieur/e
radial: radial/e
central: central/e
lateral: latéral/e
terminal: terminal/e
axillary: axillaire
marginal: marginal/e
apical: apical/e
distal: distal/e
proximal: proximal/e
fertile: fertile
sterile: stérile
pistillate: pistillé/e
staminate: staminé/e
abaxial: abaxial/e
adaxial: adaxial/e
dorsal: dorsal/e
ventral: ventral/e
ultimate: ultime
primary: primaire
secondary: secondaire
tertiary: tertiaire
anterior: antérieur/e
posterior: postérieur/e
male: mâle
female: femelle
hermaphrodite: hermaphrodite
floral: floral/e
involucral: involucral/e
principal: principal/e
""",
    "it": """
basal: basale radicale
cauline: caulino/caulina
lower: inferiore
upper: superiore
middle: mediano/mediana
inner: interno/interna
outer: esterno/esterna
central: centrale
lateral: laterale
terminal: terminale
axillary: ascellare
fertile: fertile
sterile: sterile
primary: primario/primaria
secondary: secondario/secondaria
male: maschile
female: femminile
""",
}

GERMAN = """
basal: basal grundständig
cauline: stängelständig stengelständig
lower: unter
upper: ober
middle: mittler
inner: inner
outer: äußer
uppermost: oberst
lowermost: unterst
innermost: innerst
outermost: äußerst
radial: radial
central: zentral
lateral: seitlich lateral
terminal: endständig terminal
axillary: achselständig
marginal: randständig
fertile: fertil fruchtbar
sterile: steril unfruchtbar
abaxial: abaxial
adaxial: adaxial
dorsal: dorsal
ventral: ventral
primary: primär
secondary: sekundär
male: männlich
female: weiblich
hermaphrodite: zwittrig
"""
