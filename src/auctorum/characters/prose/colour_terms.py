"""Words of colour in English, and the Latin ones that go by no rule; words that lay one colour over another.

Sources and form as in `shape_terms`; for colours also Stearn, Botanical Latin, chapter XVIII, from memory.
"""

from __future__ import annotations

COLOURS = """
reddened purpled whitened yellowed browned blackened silvered teal peachy greened bronzing wheaten white black grey
gray red orange yellow green blue violet purple pink brown cream creamy ivory beige buff tan tawny fawn khaki drab
whitish blackish greyish grayish reddish orangish yellowish greenish bluish violetish purplish pinkish brownish
creamish rose rosy roseate salmon coral apricot scarlet crimson carmine vermilion vermillion cerise maroon burgundy
vinaceous vinous claret bloody sanguine sanguineous magenta fuchsia fuchsine mauve lavender lilac lilaceous amethyst
amethystine puce indigo ultramarine azure cobalt cerulean caerulean turquoise aquamarine sapphire sapphirine cyan
cyaneous caeruleous coeruleous ianthine hyacinth hyacinthine amaranth amaranthine heliotrope emerald olive olivaceous
virid virescent viridescent viridian vitreous verdant viridulous chartreuse lemon lemony citron citrine citrinous
sulphur sulphureous sulphury sulfur sulfureous primrose canary golden gilded aureous aurate aureate saffron croceous
amber ochre ocher ochraceous ochreous ochroleucous straw stramineous strawy luteous luteolous lutescent flavous
flavescent flavid flavicant vitelline fulvous fulvescent fulvid ferruginous ferrugineous rust rusty rufous rufescent
rufidulous cinnamon cinnamomeous chestnut castaneous chocolate mahogany umber umbrinous sepia badious bronze bronzed
bronzy coppery cupreous testaceous lateritious fuscous fuscescent brunneous brunnescent dusky swarthy terracotta russet
sienna auburn ebony sooty fuliginous piceous atrous nigrescent nigrous slate slaty slatey leaden plumbeous livid lurid
ashy ashen cinereous cinerascent cineraceous griseous silver silvery argenteous argentate argentine pearly snowy
niveous milky lactescent lacteous chalk chalky cretaceous albid albescent albicant candid eburneous eburnean gilvous
isabelline isabellinous icterine purpureous purpurascent purpurescent rubescent rubicund rubiginous erubescent ruddy
florid porphyreous phoeniceous puniceous coccineous miniate cinnabar cinnabarine aurantiacous aurantiac atropurpureous
caerulescent coerulescent caesious violaceous violascent carneous incarnate incarnadine roseous salmony orangey orangy
yellowy bluey greeny pinky purply reddy browny greyey tangerine mandarin pale dark lighter darker paler palest darkest
pallid pallescent bright brighter coloured colored colourless colorless uncoloured discoloured multicoloured
multicolored multicolour varicoloured particoloured bicoloured bicolored bicolor bicolorous tricolored tricoloured
tricolor versicoloured versicolor polychrome opalescent iridescent unicolour unicolorous rubrous lilacinous steel gold
pearl navy jade ruby garnet wine cherry plum peach brick copper coffee honey mustard ash
"""

TINTED = """
tinged flushed suffused tinted washed stained spotted striped mottled variegated blotched flecked speckled streaked
marbled veined marked dappled blushed shaded freckled banded splashed dotted lined pencilled penciled maculate
maculated edged margined tipped zoned bordered feathered splotched sprinkled picotee overlaid stippled
"""

LATIN_TINTED = """
tinged = tinctus tingens; flushed = afflatus; suffused = suffusus perfusus; spotted = maculatus maculosus guttatus;
striped = vittatus fasciatus virgatus; mottled = marmoratus; variegated = variegatus; blotched = lituratus; stained =
inquinatus; speckled = conspersus adspersus; marked = notatus signatus; banded = zonatus; margined = limbatus
"""

LATIN = """
white = albus candidus candidissimus; whitish = albidus albicans albescens candicans albidulus dealbatus; snow-white =
niveus milk-white = lacteus lacticolor galactinus; ivory = eburneus eburnus; cream = cremeus cremicolor cremoricolor;
chalky = cretaceus; silvery = argenteus argentatus; grey = griseus; greyish = griseolus cinerascens; ash-grey =
cinereus cineraceus; lead-grey = plumbeus; slate-grey = schistaceus ardesiacus; black = niger nigerrimus ater
aterrimus; blackish = nigricans nigrescens nigellus nigritus; pitch-black = piceus; sooty = fuligineus fuliginosus;
jet-black = anthracinus; livid = lividus; lurid = luridus; yellow = flavus luteus flavissimus; yellowish = flavidus
flavescens flavicans lutescens luteolus flaveolus luteolescens; yellowish_white = ochroleucus; sulphur-yellow =
sulphureus sulfureus; lemon-yellow = citrinus citreus; golden = aureus auratus auricolor; golden-yellow = aurulentus;
saffron = croceus; egg-yellow = vitellinus; straw-coloured = stramineus stramineicolor; ochre = ochraceus; wax-yellow =
cerinus; buff = gilvus alutaceus; tawny = fulvus fulvellus; fulvous = fulvidus fulvescens; honey-coloured = melleus;
orange = aurantiacus aurantius; orange_yellow = luteoaurantiacus; apricot = armeniacus; green = viridis virens
viridissimus; greenish = virescens viridescens viridulus viridans; bright_green = laetevirens prasinus; olive =
olivaceus; olive-green = olivicolor; emerald-green = smaragdinus; blue-green = aeruginosus aerugineus glaucovirens;
blue = caeruleus coeruleus cyaneus; bluish = caerulescens coerulescens subcaeruleus; sky-blue = azureus coelestinus
caelestis; bluish_grey = caesius; indigo = indigoticus; slate-blue = ardosiacus; violet = violaceus ianthinus violaris;
lilac = lilacinus syringeus; mauve = malvinus; lavender = lavandulaceus; purple = purpureus porphyreus ostrinus;
purplish = purpurascens purpurellus purpurinus; dark_purple = atropurpureus; dark_green = atrovirens atroviridis;
dark_blue = atrocaeruleus atrocyaneus; dark_red = atrosanguineus atroruber; dark_violet = atroviolaceus; dark_brown =
atrofuscus atrobrunneus atrofuscescens; blackish_blue = nigrocaeruleus; plum-coloured = prunicolor; pink = roseus;
pinkish = rosellus roseolus; salmon = salmoneus salmonicolor; flesh-coloured = carneus incarnatus; red = ruber
ruberrimus rubeus; reddish = rubellus rubens rubescens rubicundus rutilus erubescens rubidus rubricosus; scarlet =
coccineus coccinellus phoeniceus puniceus; crimson = kermesinus chermesinus; carmine = carmineus carminatus; vermilion
= miniatus cinnabarinus; blood-red = sanguineus haematinus; wine-red = vinosus vinicolor; brick-red = lateritius
testaceus; cherry-red = cerasinus; coral-red = corallinus corallicolor; fire-red = igneus; flame-coloured = flammeus;
rufous = rufus rufescens; rufescent = rufidulus; ferruginous = ferrugineus ferruginosus; rust-coloured = rubiginosus;
copper-coloured = cupreus; bronze = aeneus aereus; brown = brunneus fuscus bruneus; brownish = brunnescens fuscescens
fuscatus infuscatus fuscidulus; chestnut-brown = badius; chestnut = castaneus; cinnamon = cinnamomeus cinnamominus;
chocolate-brown = chocolatinus theobrominus; umber = umbrinus; date-brown = spadiceus; coffee-brown = coffeatus; pale =
pallidus palens pallens dilutus; pallescent = pallescens; dark = obscurus; coloured = coloratus; discoloured =
decoloratus; colourless = incolor; two-coloured = bicolor; three-coloured = tricolor; variously_coloured = versicolor;
many-coloured = multicolor; magenta = magenteus; isabelline = isabellinus; dusky = pullus; amethyst = amethystinus
"""

NOUNS = """
sky wine slate steel raven lime honey mustard pearl navy jet blood gold walnut flesh cherry plum peach brick snow ash
copper coffee jade ruby garnet pea sage lead apple bay hazel grass leaf moss milk pitch ink sea bottle egg canary royal
shell fire flame iron clay wax brass parchment straw cream liver chocolate rose lemon sulphur sulfur cinnamon chestnut
emerald olive peacock indigo rust ivory salmon coral lilac violet orange apricot orchid mulberry raspberry strawberry
tomato pumpkin currant cobalt azure prussian oxblood mahogany tan sand stone dove mouse smoke silver bronze amber
saffron primrose buttercup butter citron mauve lavender magenta crimson fawn tobacco leather horn cork prune claret
port turquoise midnight forest nut date carrot pink yolk body skin bone chalk
"""
