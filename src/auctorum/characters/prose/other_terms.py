"""Words of texture, posture, arrangement, attachment and sex in English; Latin ones that go by no rule; degrees.

Sources and form as in `shape_terms`.
"""

from __future__ import annotations

TEXTURE = """
coriaceous subcoriaceous leathery membranous membranaceous membraneous membranose fleshy carnose carnous succulent
juicy chartaceous papery papyraceous cartilaginous cartilagineous crustaceous herbaceous woody ligneous lignose
lignified fibrous corky suberose suberous spongy horny corneous bony osseous stony brittle fragile flexible pliable
rigid stiff stiffish rigidulous soft softish firm tough hard hardened indurate indurated thin thinnish delicate flimsy
tender scarious hyaline translucent transparent pellucid diaphanous solid hollow fistulose fistular fistulous stuffed
pithy chambered watery dense lax loose compact gelatinous mucous crumbly friable crustose wiry elastic pulpy
lactiferous scariose rubbery stringy parchmentlike
"""

POSTURE = """
outspread outspreading upswept upcurving incurving erect suberect upright ascending ascendent assurgent spreading
patent patulous divergent diverging divaricate divaricated convergent connivent pendulous pendent pendant hanging
drooping nodding nutant cernuous declinate declined deflexed deflected reflexed recurved recurving recurvate incurved
inflexed inflected reclinate reclining reclined decurved decumbent procumbent prostrate repent creeping reptant
trailing humifuse arching appressed adpressed pressed prone supine resupinate inverted vertical horizontal porrect
strict virgate fastigiate scandent climbing twining voluble clambering sprawling rambling straggling weeping lianoid
sarmentose stoloniferous stolonous rhizomatous tufted caespitose cespitose clumped matted cushiony bushy shrubby
fruticose frutescent suffrutescent suffruticose arborescent arboreous treelike branched branching unbranched ramose
ramous ramified intricate brachiate scapose scapigerous acaulescent caulescent stemless acaulous epiphytic terrestrial
parasitic hemiparasitic saprophytic mycoheterotrophic aquatic submerged submersed emersed emergent floating natant
amphibious annual biennial perennial monocarpic polycarpic ephemeral squarrose secund unilateral antrorse retrorse
extrorse introrse latrorse adnascent tortile retroflexed flaccid limp floppy lolling gregarious versatile dorsifixed
medifixed excurrent percurrent diffuse effuse declinous erectopatent halophytic lithophytic rupestral
"""

PLACED = """
sessile subsessile stalked stalkless petiolate petioled petiolar petiolulate epetiolate pedicellate pedicelled
epedicellate pedunculate peduncled epedunculate stipitate stiped estipitate exstipitate stipellate stipulate estipulate
exstipulate bracteate ebracteate bracteolate ebracteolate alternate subalternate opposite subopposite whorled
verticillate verticillated quaternate spirally decussate distichous tristichous imbricate imbricated imbricating
overlapping valvate equitant crowded congested clustered fascicled fasciculate fasciculated glomerate agglomerate
aggregate aggregated conferted confert remote distant scattered approximate connate coalescent concrescent fused united
free distinct separate discrete gamopetalous sympetalous polypetalous gamosepalous polysepalous choripetalous apetalous
apopetalous gamophyllous syncarpous apocarpous monadelphous diadelphous polyadelphous synantherous syngenesious
coherent cohering adherent adnate adnated exserted included inserted enclosed protruding inferior superior hypogynous
perigynous epigynous epipetalous antisepalous antipetalous alternipetalous oppositipetalous basal radical cauline
axillary terminal apical lateral subterminal subapical median marginal dorsal ventral parietal axile rosulate rosetted
radicant rooting nodal cauliflorous ramiflorous penniveined penninerved palminerved palmatinerved triplinerved
trinervate plinerved campylodromous brochidodromous eucamptodromous craspedodromous actinodromous tripliveined
trinerved uninerved quinquenerved trinervous trinervious uninervate plurinerved multinerved penninervate racemose
paniculate spicate umbellate cymose corymbose thyrsoid capitulate umbelliform corymbiform spiciform racemiform
paniculiform cymiform amentaceous dichasial monochasial scorpioid helicoid fasciate subumbellate involucrate
exinvolucrate calyculate interrupted continuous articulate articulated jointed disarticulating unjointed
"""

LIFE = """
persistent marcescent deciduous caducous fugacious fugaceous evanescent ephemerous evergreen semideciduous accrescent
sempervirent circumscissile dehiscent indehiscent loculicidal septicidal poricidal septifragal valved operculate
valvular fragrant scented scentless odorous odourless odorless inodorous unscented aromatic foetid fetid malodorous
stinking odoriferous perfumed bitter acrid sweet acidic aromatical tasteless edible poisonous fertile sterile barren
infertile perfect imperfect dioecious monoecious gynodioecious polygamous polygamodioecious trioecious gynomonoecious
andromonoecious androdioecious hermaphrodite hermaphroditic bisexual unisexual staminate pistillate carpellate male
female neuter asexual polygamomonoecious homogamous heterogamous homomorphic heteromorphic dimorphic dimorphous
monomorphic trimorphic polymorphic polymorphous uniform variable homostylous heterostylous distylous tristylous
protandrous protogynous cleistogamous chasmogamous diurnal nocturnal vespertine present absent obsolete vestigial
rudimentary reduced lacking wanting suppressed abortive developed undeveloped minute inconspicuous conspicuous showy
prominent obscure visible invisible indistinct raised elevated evident immersed anastomosing concolorous concolor
concolourous discolorous discolor discolour concolored discolored biseriate uniseriate multiseriate triseriate
uniserial biserial multiserial unilocular bilocular trilocular plurilocular multilocular quadrilocular quinquelocular
monothecous bithecous dithecous uniovulate biovulate multiovulate pluriovulate epappose pappose arillate exarillate
anatropous orthotropous campylotropous albuminous exalbuminous strophiolate carunculate nectariferous nectarless
spathaceous bulbiferous bulbilliferous viviparous proliferous tuberiferous gemmiferous fruticulose suffruticous
biflorous multiflorous pauciflorous uniflorous triflorous pluriflorous coetaneous precocious serotinous double
isomerous anisomerous tetramerous pentamerous trimerous dimerous hexamerous polymerous didynamous tetradynamous
obdiplostemonous diplostemonous similar dissimilar identical unlike
"""

LATIN = """
coriaceous = coriaceus; membranous = membranaceus membranosus membraneus; fleshy = carnosus carnosulus; succulent =
succulentus; papery = papyraceus; chartaceous = chartaceus; herbaceous = herbaceus; woody = lignosus ligneus; rigid =
rigidus rigens; stiff = rigidulus; soft = mollis; firm = firmus; hard = durus; thin = tenuiculus; delicate = tener;
scarious = scariosus; pellucid = pellucidus; translucent = translucidus translucens; hollow = cavus; fistulose =
fistulosus; solid = solidus; lax = laxus; dense = densus; fragile = fragilis; flaccid = flaccidus; corky = suberosus;
juicy = succosus; erect = erectus; suberect = erectiusculus; ascending = ascendens adscendens assurgens; spreading =
patens patulus expansus; widely_spreading = patentissimus; divergent = divergens; connivent = connivens; pendulous =
pendulus pendens dependens; nodding = nutans cernuus; deflexed = deflexus; reflexed = reflexus retroflexus; recurved =
recurvus recurvatus; incurved = incurvus incurvatus incurvans; inflexed = inflexus; decumbent = decumbens; procumbent =
procumbens; prostrate = prostratus humifusus humistratus; creeping = repens reptans; appressed = appressus adpressus;
resupinate = resupinatus; climbing = scandens; twining = volubilis; tufted = caespitosus cespitosus; shrubby =
fruticosus frutescens; subshrubby = suffruticosus suffrutescens; arborescent = arboreus arborescens; branched = ramosus
ramosissimus ramulosus ramificans; unbranched = eramosus; stemless = acaulis; terrestrial = terrestris; aquatic =
aquatilis aquaticus; annual = annuus; biennial = biennis; perennial = perennis; epiphytic = epiphyticus; one-sided =
secundus unilateralis; declinate = declinatus; ascending-spreading = erectopatens erectopatentis; strict =
strictissimus; sessile = sessilis; petiolate = petiolatus; pedicellate = pedicellatus; pedunculate = pedunculatus;
bracteate = bracteatus; alternate = alternus alternans; opposite = oppositus; whorled = verticillatus; decussate =
decussatus; distichous = distichus; imbricate = imbricatus imbricans; crowded = confertus congestus; clustered =
aggregatus glomeratus fasciculatus; distant = distans remotus dissitus; scattered = sparsus; approximate =
approximatus; connate = connatus; united = coalitus unitus; fused = concretus; free = liber; distinct = distinctus
discretus; adnate = adnatus; exserted = exsertus exertus; included = inclusus; inferior = inferus; superior = superus;
basal = basalis basilaris; radical = radicalis; cauline = caulinus; axillary = axillaris; terminal = terminalis;
lateral = lateralis; persistent = persistens; deciduous = deciduus; caducous = caducus; fugacious = fugax; evergreen =
sempervirens; marcescent = marcescens; dehiscent = dehiscens; indehiscent = indehiscens; fragrant = fragrans
fragrantissimus suaveolens odoratus odorus; odourless = inodorus; foetid = foetidus foetens graveolens; fertile =
fertilis; sterile = sterilis; barren = effetus; dioecious = dioicus dioecus; monoecious = monoicus; polygamous =
polygamus; hermaphrodite = hermaphroditus; unisexual = unisexualis; male = masculus masculinus; female = femineus
foemineus; absent = nullus absens deficiens; obsolete = obsoletus; present = praesens; conspicuous = conspicuus;
inconspicuous = inconspicuus; prominent = prominens prominulus; raised = elevatus; immersed = immersus; obscure =
inconspectus; concolorous = concolor; discolorous = discolor; minute = minutus minutissimus; persistent-scaly =
tunicosus; dimorphic = dimorphus; variable = variabilis; edible = edulis; jointed = articulatus; interrupted =
interruptus; terminal-flowered = terminiflorus; whorl-leaved = verticillifolius; bulbiferous = bulbifer; stoloniferous
= stolonifer; rooting = radicans; sheathed = vaginatus; floating = natans; submerged = submersus demersus; similar =
similis consimilis conformis; dissimilar = dissimilis difformis; one-flowered = uniflorus; two-flowered = biflorus;
three-flowered = triflorus; many-flowered = multiflorus; few-flowered = pauciflorus; double = plenus; one-nerved =
uninervis uninervius; three-nerved = trinervis trinervius trinerviatus; five-nerved = quinquenervis quinquenervius;
penninerved = penninervis penninervius; triplinerved = triplinervis triplinervius; many-nerved = multinervis
multinervius; two-seriate = biserialis biseriatus; one-seriate = uniserialis uniseriatus; one-celled = unilocularis;
two-celled = bilocularis; three-celled = trilocularis; one-seeded = monospermus; two-seeded = dispermus; many-seeded =
polyspermus; leafless = aphyllus
"""
