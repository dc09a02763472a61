"""Everyday words that mean only themselves: a slip of the thumb is never suspected in them."""

from __future__ import annotations

from typing import Final

COMMON: Final = frozenset(
    """
a about above across act acted actually add afraid after afternoon again against age ago agree ahead aim air all almost alone along already
also always am among amount an and angry animal animals another answer any anybody anymore anyone anything anyway anywhere apart apparently
apple apples are area aren arent arm around arrive as aside ask asked asking asleep at attention aunt autumn awake away awesome awful
baby back bad badly bag bags ball bar bare barely barn basket bath be bean beans beat beautiful became because become bed bedding been before began
begin behind being believe bell below belly bend bent beside best bet better between big bigger bill bird birds birth bite bits bitter
blame blanket bless block blood blow blown board boat body bone bones book books boot boots born boss both bother bottle bottom bought bow
bowl box boxes boy boys branch brand brave bread break breakfast breath breathe breeze brick bright bring broke broken brother brought brown brush
bucket build building bundle bunnies bunny burn busy but butter button buy by cage cages cake call called calling calls calm came camera can cannot cant
car card care careful carefully carrot carrots carry case cash cat catch cats caught cause ceiling center certain certainly chain chair chance change
changed changes changing charge cheap check checked checking cheek cheese chest chew chewed chewing chicken chickens chickens child children choice chore chores
christmas church circle city class clean cleaned cleaner cleaning clear clearly clever climb clock close closed closer clothes cloud clouds coat coats
coffee cold colder come comes comfortable coming common company complain complete completely concern concerned condition cook cool
corn corner cost costs cough could couldnt count country couple course cousin cover covered cow cows crazy creek cried cries cross crowd cruel crumb cry cup
curious curl cut cute dad daily damn damp dark darn daughter day days dead deal dear death decide decided deep deer definitely
degree degrees describe desk did didnt die different difficult dig digging dinner dirt dirty disappear dish do doctor does doesnt dog dogs doing
done dont door doors double doubt down downstairs dozen drag dragged draft drank draw dream dress drink drinking drive driving drop dropped
drove dry duck ducks dumb during dust dusty each ear earlier early ears earth ease easier easily east easy eat eaten eating edge egg eggs either
else email empty end ended ends energy enjoy enough entire escape escaped especially etc even evening ever every everybody everyone everything
everywhere exactly except excited excuse expect expected eye eyes face fact faint fair fairly fall family fan fancy far farm fast faster fat father
favorite fear feather feed feeder feeding feel feeling feels feet fell fellow felt fence few field fight fighting figure figured fill filled final
finally find fine finger fingers finish finished fire firm first fit fits five fix fixed flat flew flip floor flower fluff fly folks follow
food foot for forever forget forgot form forth forward found free freeze freezing freezer fresh friend friendly friends from front frozen fruit full fun funny
fur furry future game garage garden gate gave gentle get gets getting giant girl girls give given gives giving glad glass glove gloves go goat goats
goes going gone gonna good goodness gosh got gotta grab grandma grandpa grandson grass gray great green grey grew ground group grow growing grown guess gun guy
guys had hadnt hair hairs half hand handle handled hands hang happen happened happens happy hard hardly has hasnt hat hate have havent having hay he
head health healthy hear heard heart hearts heat heavy heck held hell hello help helped helping hen hens her here hers herself hes hey hi hid hidden hide
high hill him himself hip his hit hold holding hole home honest honestly honey hope hopefully hoping hopped hopping horse hose hospital hot hour hours house how
however huge human hundred hung hungry hurry hurt hurts husband hutch ice idea if ill im important in inch inches indeed inside instead interested into
iron is isnt it its itself ive jacket job join joke jump jumped just keep keeper keeping keeps kept key kick kicked kid kids kill killed kind kinda kinds king
kitchen knee knew knife knock know known knows lack ladder lady laid lamp land large last late lately later laugh lawn lay laying lazy lead leaf leak leaked
learn least leave leaves leaving led left leg legs less lesson let lets letter letting level lick licked licking lie life lift lifted light like liked likely
likes lil line lint list listen little live lived lives living load local lock locked lol long longer look looked looking looks loose lord lose losing loss lost
lot lots loud love loved lovely loves low lower luck lucky lunch machine mad made maggie mail main make makes making mama man manage managed many mark market
mass match matter may maybe me meal mean means meant meat meet men mention mess message met middle might mild mile milk mind mine minute minutes mirror miss
missing mistake mix mixed mom moment money month months mood moon more morning most mostly mother mouse mouth move moved moves moving much mud muddy my myself
nail nails name named nap near nearly neat neck need needed needs neighbor neighbors neighbour neither nervous nest never new news next nice nicely night nights nobody
noise none noon nope normal north nose not note notes nothing notice noticed now number nursing nut odd of off offer office often oh ok okay old older on once
one ones only onto open opened operator or orange order other others ought our ours out outside over overall overnight owe owed own owned owner pack page paid pail
pain paint pair pan paper parent parents park part party pass past patch path pay paw peace pen pens people perfect perhaps person phone photo pick picked
picking picture pie piece pile pill pills pink pipe place plain plan plant plate play played playing please plenty plus pocket point pointed poor pop porch post
pot pounds pour power practically prefer present pretty price print probably problem problems promise proper proud prove proven public pull pulled pulling pump push pushed put puts
putting quick quickly quiet quit quite rabbit rabbits race radio rag rain rained raining ran rather reach read reading ready real really reason record red rent
rest return rice rich rid ride right rip rise road roll roof room rooster rough round row rub run running runs rush sad safe said salt same sand sassy sat saturday
save saved saw say saying says scale scared school scoop scratch screw seat second see seed seeing seem seemed seems seen self sell send sense sent separate
serious set settle settled several shade shake shall shame shape share sharp shavings shed sheep sheet shell shes shine ship shirt shoe shoes shoot alright peek shop short shot should shoulder shouldnt
shout shovel show showed shows shut shy sick side sign silly simple simply since sing single sir sister sit sits sitting six size sky sleep sleeping slept slice slide
slip slippers slow slowly small smart smell smelled smells smile smoke snow so soap soft soil some somebody someday somehow someone something sometime sometimes somewhere son song soon sooner
sore sorry sort soul sound sounds soup south space spare speak special spend spent spice spill spilled spoke spoon spot spots spray spread spring squeak stack
stall stand standing stands star stare start started starting starts station stay stayed steal step stepped stick sticks still stink stinks stomach stone stood
stop stopped store storm story straight strange straw street stretch string strong stubborn stuck stuff stupid such sudden suddenly sugar suit summer sun sunny supper
supply suppose supposed sure surprise surprised sweep sweet swept switch table tail take taken takes taking talk talked talking tall tame tank tape taste taught tea
teach team tear tell telling ten tend test than thank thanks that thats the their them themselves then there theres these they theyre thick thin thing things think
thinking third this thorough those though thought thousand threw throat through throw throwing thrown thumb tie tied tight till time times tin tiny tip tire
tired to toe toes together told tomorrow tone tongue tonight too took tool tools tooth top torn total touch tough toward town toy track tractor trade trailer
trap trash tray treat treats tree trees tried trip trouble truck true trust try trying turn turned turning twice two type ugh ugly um uncle under understand unless
until up upon upset us use used useful using usual usually vet very view visit voice wait waited waiting wake walk walked walking wall want wanted wanting wants warm warmer was
wash washed wasnt waste watch watched watching water watered watering waters way ways we weak wear weather week weekend weeks weird welcome well went were werent west wet wheel when
where whether which while whole whose why wide wife wild will wind window winter wipe wire wise wish with within without woke woman won wonder wonderful wont
wood wooden word words work worked working works world worm worn worried worry worse worst worth would wouldnt wrap write wrong wrote yard yeah year years yell yellow yep yes
yesterday yet you young your yours yourself youre theyve weve id ill ive hed shed wed lets whats hows heres yall weighin dang stuff figs feel feels
plump chubby skinny perky alert lively active restless grumbling lonely happy jumpy chatty fussy picky mopey sleepy hefty
bead beard bear beer berry bib bin bind birch bits bland blend bloom blot boil bolt bond boom bore bounce bowl brace brain brake brass breast bud bug bulb bull bump bunch burst
cabin cable calf calves camp candle candy cane cart carve cattle cave chase chip choke chop clap clay click cliff clip cloth club coal coast coin comb cord cork cotton craft crane crash crawl crawled creep crisp crop crow crown crust
dare date dealt debt deck deed den dent dice dime dip ditch dive dock doll dot dove drain drew drift drill drip drum duke dull dump
fade fail faith fake false fame fate fault favor feast feat fed fern fever film fin fist flag flame flap flash flea flesh float flock flood flour flow foam fog foil fold fond fool ford fork fort foul fox frame frog frost fry fuel fuss
gain gap gas gaze gear gift glow glue gold golf gown grace grade grain grand grape grapes grave graze greet grill grin grip grit growl guard guest guide gulf gum gut
hail halt ham hammer harm harsh harvest haul hawk hay heap heel height herd hero hint hire hitch hog hook hoop horn host hug hum hunt hurl
jail jar jaw jeans jelly jet jog joint joy judge jug juice junk jury
kettle kiss kit kite kneel knit knot label lace lake lamb lane lap lash lawn leap lend lens lid limb lime limp link lion lip litter liver loaf loan lobby log loop lord lung
maid male map march mask mate math maze medal melt menu mild mill mint mole monkey mop moss moth mount mow mug mule mushy
nasty native navy nerve net nod noon north notch nurse oak oat oats oil olive onion oven pace pad palm panel pant park paste pat patient pea peach pear peck peel peg pet pig pigs pin pine pint pitch pity
plot plow plug poem pole polite pond pony pool porch pork pose pound praise pray press pride prize pulse purple purse queen quilt
rack raft rage rail rake ramp ranch range rank rare rat rats rate raw ray reed reel reply rescue rib ribs ridge ring ripe river roast rob robin rock rod rope rose rosie rot route ruin rule rust
sack saddle sail salad sale sauce saucer scar scarf scene scent scrape scream screen scrub seal seam search seize sew shadow shave shelf shelter shield shift shock shore shower shrink sigh silk sink skill skin skip skirt skull slam slap sled slope smash smooth snack snake snap sneak sniff soak sob sock sofa sole solid sour spade spark spell spider spin spine spit split spoil sport square squeeze stable staff stage stain stair stamp stare steam steel steep steer stem stew stir stitch stock stool storage stove strap stream stress strict strike strip stroke study style swallow swam sway swear sweat swell swift swim swing
tack tag tale tan tap tar target task taxi tent term thief thigh thread threat thrill thumb thunder tick ticket tide tidy tile timber toad toast toll tomato torch toss tower trail train tramp travel tread trend trial tribe trick trim troop trot trunk tub tuck tug tune turkey turkeys tutor twin twist
vase veal vein vest vine waist wander ward warn wax weave weed weep whip whisper whistle wick widow wig wing wings wink wit wolf wool worn wrist yarn yawn zip zone
carefree proven draft freezing buried bury grumpy grownup grandkids visitor visitors auction customer customers buyer lady family fair county farmer market flea
tractors deliver delivered delivery grocery counter invoice receipt order ticket thank cash change subtotal
niece nephew nieces nephews granddaughter grandchildren teacher school student students vet vets feller folks buddy coworker boss church librarian mailman sheriff preacher
stretched stretching stretch reached scratching wrestled balanced
fella fellas extras welp ope dangit argh yikes yay hooray woohoo whew phew huh hmm hm aww eek geez sheesh alrighty okey dokey fyi btw lol omg rip ugh yup nah
god able meeting plane gentlemen showing scare lips staring pissed sakes suits worker scares kindly dresses souls spoiled pointing crashed wished lungs collar caller drown
wired dried gently slipping pals punched crank cranky popping batch bidding slapped farther pawn token slips ticked cracks claws dresser warmed fills bottled clam stale senior fading
salty noose spoiling plaid menus dread peeking chipped cuddle timed scarred movers slapping sipping intro typed stamped snooze giver winnings faulty brooding sweats peeled dozed
brushes brushed peeping timers stumped crushes washes swiped lumps warms diseased collars remover caged snort manger gentler tamper panes pawns musty mover coolers brewed tacked
hunches dries cleansed sifting seeping loosing pinches bakes trotting swells sowing shafted waning swooped peering hatches doers tamed sweated scaly muted grills matted hissed clapped
braiding shuttles scald grated whizzing lumped hummed groomer gripes service services battle arts places names caused era raised passed passes counties tries rates processes rising
struck lasted judges ratio mines grades ties sailed theories sized grows ruins lasting planes scouts savings masses finishes peers pools beetles drilling switches planting lamps pillar
barred purchases relocate sails removes cafes trough flees drone reused paced sheds completes piping striving planned opportunity question questions movie movies wearing willing learned
knowing tells matters orders order biggest connection kissing hated packed gifts rolling smiling guards cleared helps proceed waking remembers trapped charming cooking warned busted
possible possibly meal meals holes bench reminded hoped hopes listening counting suffering touching handling guessing catching filling dining dressing trusting ordering grounded crawling
splitting settling pounding partying glowing stitches specials bouncing closes boxes startled baking tossing squeezed swearing drifting sweeping folding dripping stirring bending soaking
weaving leaning resting nailed failed hauled hauling dumping dumped dipping climbing climbed gnawing gnawed chewing hopping digging nosing sniffing sniffed napped yawning loafing flopped
message noted text testing test hello hey thanks thank please sorry
""".split()  # noqa: SIM905 - a table of words
)
