"""Words of degree, which stay part of a state: `densely pubescent`, `pale yellow`; other languages by their English.

Entries read `english = word word;`; from memory.
"""

from __future__ import annotations

ENGLISH = """
densely sparsely slightly shortly softly almost completely strongly broadly narrowly very minutely finely coarsely
deeply shallowly distinctly thinly nearly rather somewhat faintly pale light deep dark dull bright pure rich vivid
clear dirty wholly entirely totally quite fully partly partially thickly closely loosely laxly weakly moderately
conspicuously inconspicuously prominently obscurely markedly extremely exceedingly highly scarcely hardly barely
heavily lightly sharply bluntly abruptly gradually irregularly regularly unequally equally evenly unevenly remotely
distantly copiously abundantly profusely thoroughly perfectly longly roughly roundly widely strictly tightly stiffly
rigidly plainly delicately brightly darkly palely dully freely simply doubly trebly triply once twice thrice obliquely
transversely longitudinally spirally slenderly stoutly subtly narrow broad medium intense intensely brilliant soft
sombre somber faint smoky dusky muddy watery vividly richly clearly purely dirtily minorly variously strikingly
indistinctly imperfectly incompletely manifestly evidently greatly decidedly sub semi quasi wonderfully uniformly
shaggily exactly pseudo truly noticeably dingy lurid
"""

FOREIGN = """
densely = dense dense densissime densius densamente densement dichte dicht densament; sparsely = sparse parce sparsim
esparsamente escasamente esparcidamente spärlich zerstreut clairsemé; slightly = leviter paulum paullo paululum
ligeramente levemente leggermente légèrement peu schwach leicht; shortly = breviter cortamente brevemente curtamente
brièvement courtement kurz; softly = molliter suavemente mollement blandamente weich; almost = fere pene paene casi
quase quasi presque fast beinahe; completely = omnino totaliter prorsus completamente totalmente complètement
entièrement ganz völlig gänzlich; strongly = valde fortiter fuertemente fortemente fortement stark; broadly = late
latissime anchamente ampliamente amplamente largamente largement breit; narrowly = anguste angustissime estrechamente
estreitamente angostamente étroitement strettamente schmal; very = perquam admodum maxime muy muito très molto sehr;
minutely = minute minutim minutissime diminutamente minutamente minuziosamente winzig; finely = tenuiter subtiliter
finamente finement fein; coarsely = grosse grossamente groseramente grossièrement grob; deeply = profunde profundamente
profondément profondamente tief; distinctly = distincte distintamente distinctement manifeste deutlich; scarcely = vix
aegre apenas kaum; rather = satis bastante assez piuttosto ziemlich; somewhat = aliquantum algo etwas pouco; more =
magis; thinly = tenuissime; thickly = crasse; closely = arcte; loosely = laxe laxamente laxiuscule lâchement locker;
gradually = sensim gradatim gradualmente paulatinamente allmählich; abruptly = abrupte subito bruscamente abruptamente
brusquement plötzlich; sharply = argute acriter agudamente nettement scharf; irregularly = irregulariter irregularmente
irrégulièrement unregelmäßig; regularly = regulariter regelmäßig regularmente régulièrement; unequally = inaequaliter
desigualmente inégalement ungleich; equally = aequaliter gleich; remotely = remote entfernt; doubly = duplicato
dupliciter doblemente duplamente doppelt; conspicuously = conspicue eximie insigniter conspicuamente auffallend;
copiously = copiose abundantemente reichlich; pinnately = pinnatim; palmately = palmatim; obliquely = oblique
oblicuamente obliquamente schief; widely = ample; pale = pallide dilute claro clara claros claras clair claire clairs
claires pálido pálida pálidos pálidas chiaro chiara chiari hell blass bleich zart clarito; dark = obscure oscuro oscura
oscuros oscuras escuro escura escuros escuras scuro scura scuri foncé foncée foncés foncées sombre dunkel obscur; deep
= saturate intense intenso intensa intensos intensas intensamente profond profundo satt; bright = laete splendide
vivide brillante vivo viva vivos vivas vif vive vifs vives lebhaft leuchtend acceso; dull = sordidule mate apagado matt
terne; pure = pure puro pura puros puras pur rein; dirty = sordide sucio sucia sujo suja sale schmutzig sporco; rich =
kräftig; vivid = vivissime grell; clear = limpide
"""
