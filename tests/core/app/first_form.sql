BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0001');
CREATE TABLE buttons (
	farm_id INTEGER NOT NULL, 
	"key" TEXT NOT NULL, 
	bundle TEXT NOT NULL, 
	chat TEXT NOT NULL, 
	person TEXT, 
	label TEXT NOT NULL, 
	says TEXT NOT NULL, 
	reply_to TEXT, 
	expires_at DATETIME NOT NULL, 
	used_at DATETIME, 
	CONSTRAINT pk_buttons PRIMARY KEY (farm_id, "key"), 
	CONSTRAINT fk_buttons_farms FOREIGN KEY(farm_id) REFERENCES farms (id)
);
INSERT INTO "buttons" VALUES(1,'Rb39BeUM8Br7c1TL','one','1001',NULL,'14','14 weighed 8-2',NULL,'2026-12-25 13:10:00.000000',NULL);
CREATE TABLE chats (
	farm_id INTEGER NOT NULL, 
	chat TEXT NOT NULL, 
	active BOOLEAN NOT NULL, 
	CONSTRAINT pk_chats PRIMARY KEY (farm_id, chat), 
	CONSTRAINT fk_chats_farms FOREIGN KEY(farm_id) REFERENCES farms (id)
);
INSERT INTO "chats" VALUES(1,'1001',1);
CREATE TABLE fact_ailment (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	sign TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_ailment PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_ailment_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_animal (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	tag TEXT NOT NULL, 
	name TEXT, 
	sex TEXT, 
	breed TEXT, 
	color TEXT, 
	born DATE, 
	sire TEXT, 
	dam TEXT, 
	origin TEXT, 
	price INTEGER, 
	"on" DATE, 
	CONSTRAINT pk_fact_animal PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_animal_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
INSERT INTO "fact_animal" VALUES(1,1,0,'14',NULL,'doe','Mini Rex','castor','2025-03-04',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "fact_animal" VALUES(1,2,0,'3',NULL,'buck','Mini Rex',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE fact_bred (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	buck TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	falls INTEGER, 
	CONSTRAINT pk_fact_bred PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_bred_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
INSERT INTO "fact_bred" VALUES(1,3,0,'14','3','2026-10-27',NULL);
CREATE TABLE fact_color (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	color TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_color PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_color_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_condition (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	score FLOAT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_condition PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_condition_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_correct (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"set" TEXT NOT NULL, 
	who TEXT, 
	CONSTRAINT pk_fact_correct PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_correct_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_culled (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	litter_of TEXT, 
	count INTEGER, 
	live_grams INTEGER, 
	dressed_grams INTEGER, 
	CONSTRAINT pk_fact_culled PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_culled_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_died (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	litter_of TEXT, 
	count INTEGER, 
	cause TEXT, 
	CONSTRAINT pk_fact_died PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_died_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_done (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	chore TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	"key" TEXT, 
	CONSTRAINT pk_fact_done PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_done_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_fault (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	fault TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	disqualifies BOOLEAN, 
	CONSTRAINT pk_fact_fault PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_fault_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_feed_bought (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	grams INTEGER, 
	bags INTEGER, 
	price INTEGER, 
	CONSTRAINT pk_fact_feed_bought PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_feed_bought_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_feed_left (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	grams INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_feed_left PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_feed_left_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_for_sale (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	litter_of TEXT, 
	count INTEGER, 
	price INTEGER, 
	until DATE, 
	CONSTRAINT pk_fact_for_sale PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_for_sale_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_fostered (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"from" TEXT NOT NULL, 
	"to" TEXT NOT NULL, 
	count INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_fostered PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_fostered_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_given_away (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	litter_of TEXT, 
	count INTEGER, 
	"to" TEXT, 
	CONSTRAINT pk_fact_given_away PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_given_away_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_kindled (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	born INTEGER, 
	alive INTEGER, 
	dead INTEGER, 
	CONSTRAINT pk_fact_kindled PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_kindled_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
INSERT INTO "fact_kindled" VALUES(1,4,0,'14','2026-11-27',8,6,2);
CREATE TABLE fact_kit_count (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	count INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	age_days INTEGER, 
	CONSTRAINT pk_fact_kit_count PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_kit_count_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_kits_lost (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	count INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	cause TEXT, 
	CONSTRAINT pk_fact_kits_lost PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_kits_lost_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_litter_colors (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	colors TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_litter_colors PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_litter_colors_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_litter_weighed (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	grams INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	count INTEGER, 
	age_days INTEGER, 
	CONSTRAINT pk_fact_litter_weighed PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_litter_weighed_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_missed (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_missed PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_missed_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_moved (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	cage TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_moved PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_moved_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_nest_box (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	change TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_nest_box PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_nest_box_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_nest_manners (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	sign TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_nest_manners PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_nest_manners_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_palpated (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	result TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_palpated PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_palpated_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_planned (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	what TEXT NOT NULL, 
	"on" DATE, 
	until DATE, 
	with TEXT, 
	reason TEXT, 
	CONSTRAINT pk_fact_planned PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_planned_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_query (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	about TEXT NOT NULL, 
	who TEXT, 
	with TEXT, 
	scope TEXT, 
	breed TEXT, 
	until DATE, 
	CONSTRAINT pk_fact_query PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_query_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_ration (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	amount FLOAT NOT NULL, 
	unit TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	scope TEXT, 
	CONSTRAINT pk_fact_ration PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_ration_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_refused (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	buck TEXT, 
	CONSTRAINT pk_fact_refused PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_refused_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_remark (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	text TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	CONSTRAINT pk_fact_remark PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_remark_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_remind (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	text TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	time TEXT, 
	who TEXT, 
	"key" TEXT, 
	CONSTRAINT pk_fact_remind PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_remind_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
INSERT INTO "fact_remind" VALUES(1,7,0,'buy hay','2026-11-28',NULL,NULL,NULL);
CREATE TABLE fact_scored (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	trait TEXT NOT NULL, 
	score FLOAT NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_scored PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_scored_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_setting (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	value TEXT NOT NULL, 
	breed TEXT, 
	CONSTRAINT pk_fact_setting PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_setting_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
INSERT INTO "fact_setting" VALUES(1,8,0,'reminder_time','"08:00"',NULL);
CREATE TABLE fact_shown (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	placing TEXT, 
	CONSTRAINT pk_fact_shown PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_shown_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_skipped (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	chore TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	CONSTRAINT pk_fact_skipped PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_skipped_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_sold (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	litter_of TEXT, 
	count INTEGER, 
	price INTEGER, 
	"to" TEXT, 
	CONSTRAINT pk_fact_sold PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_sold_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_tagged (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	tag TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	who TEXT, 
	litter_of TEXT, 
	sex TEXT, 
	color TEXT, 
	CONSTRAINT pk_fact_tagged PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_tagged_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_temper (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	grade TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	sign TEXT, 
	CONSTRAINT pk_fact_temper PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_temper_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_treated (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	with TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	dose TEXT, 
	withdrawal_days INTEGER, 
	CONSTRAINT pk_fact_treated PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_treated_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_undo (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT, 
	about TEXT, 
	CONSTRAINT pk_fact_undo PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_undo_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
INSERT INTO "fact_undo" VALUES(1,6,0,NULL,NULL);
CREATE TABLE fact_weaned (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	doe TEXT NOT NULL, 
	count INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	bucks INTEGER, 
	does INTEGER, 
	CONSTRAINT pk_fact_weaned PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_weaned_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_weather (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	what TEXT NOT NULL, 
	"on" DATE NOT NULL, 
	celsius FLOAT, 
	CONSTRAINT pk_fact_weather PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_weather_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE fact_weighed (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	who TEXT NOT NULL, 
	grams INTEGER NOT NULL, 
	"on" DATE NOT NULL, 
	CONSTRAINT pk_fact_weighed PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_fact_weighed_facts FOREIGN KEY(farm_id, note_id, fact_index) REFERENCES facts (farm_id, note_id, fact_index)
);
CREATE TABLE facts (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	fact_index INTEGER NOT NULL, 
	kind TEXT NOT NULL, 
	CONSTRAINT pk_facts PRIMARY KEY (farm_id, note_id, fact_index), 
	CONSTRAINT fk_facts_farms FOREIGN KEY(farm_id) REFERENCES farms (id), 
	CONSTRAINT fk_facts_notes FOREIGN KEY(farm_id, note_id) REFERENCES notes (farm_id, id)
);
INSERT INTO "facts" VALUES(1,1,0,'animal');
INSERT INTO "facts" VALUES(1,2,0,'animal');
INSERT INTO "facts" VALUES(1,3,0,'bred');
INSERT INTO "facts" VALUES(1,4,0,'kindled');
INSERT INTO "facts" VALUES(1,6,0,'undo');
INSERT INTO "facts" VALUES(1,7,0,'remind');
INSERT INTO "facts" VALUES(1,8,0,'setting');
CREATE TABLE farms (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_farms PRIMARY KEY (id), 
	CONSTRAINT uq_farms_name UNIQUE (name)
);
INSERT INTO "farms" VALUES(1,'home');
CREATE TABLE inbox (
	id INTEGER NOT NULL, 
	farm_id INTEGER NOT NULL, 
	bot_id TEXT NOT NULL, 
	update_id BIGINT NOT NULL, 
	chat TEXT NOT NULL, 
	raw TEXT NOT NULL, 
	state TEXT NOT NULL, 
	tries INTEGER NOT NULL, 
	handed_out INTEGER NOT NULL, 
	claimed_by TEXT, 
	claimed_until DATETIME, 
	CONSTRAINT pk_inbox PRIMARY KEY (id), 
	CONSTRAINT fk_inbox_farms FOREIGN KEY(farm_id) REFERENCES farms (id), 
	CONSTRAINT uq_inbox_bot_id_update_id UNIQUE (bot_id, update_id)
);
INSERT INTO "inbox" VALUES(1,1,'7',1,'1001','{}','done',0,1,NULL,NULL);
INSERT INTO "inbox" VALUES(2,1,'7',2,'1001','{"a":2}','pending',0,0,NULL,NULL);
CREATE TABLE members (
	farm_id INTEGER NOT NULL, 
	account TEXT NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	joined_at DATETIME NOT NULL, 
	CONSTRAINT pk_members PRIMARY KEY (farm_id, account), 
	CONSTRAINT fk_members_farms FOREIGN KEY(farm_id) REFERENCES farms (id)
);
INSERT INTO "members" VALUES(1,'telegram:1001','Ann','owner','2026-11-25 13:10:00.000000');
CREATE TABLE notes (
	farm_id INTEGER NOT NULL, 
	id INTEGER NOT NULL, 
	chat TEXT NOT NULL, 
	number TEXT, 
	edit BIGINT NOT NULL, 
	author TEXT NOT NULL, 
	sent_at DATETIME NOT NULL, 
	text TEXT NOT NULL, 
	reply_to TEXT, 
	ask TEXT, 
	subject TEXT, 
	unread TEXT NOT NULL, 
	reply TEXT NOT NULL, 
	CONSTRAINT pk_notes PRIMARY KEY (farm_id, id), 
	CONSTRAINT fk_notes_farms FOREIGN KEY(farm_id) REFERENCES farms (id), 
	CONSTRAINT uq_notes_farm_id_chat_number_edit UNIQUE (farm_id, chat, number, edit)
);
INSERT INTO "notes" VALUES(1,1,'terminal','8f346a1604234588aa876f04a1e91830',0,'me','2026-11-27 07:57:42.414604','new doe 14 mini rex castor born 3/4/2025',NULL,NULL,'14','','Doe 14 on the book: Mini Rex, castor, born Tue 4 Mar 2025.');
INSERT INTO "notes" VALUES(1,2,'terminal','028f98b148e240b9936cbf5fe8647905',0,'me','2026-11-27 07:58:28.426143','new buck 3 mini rex',NULL,NULL,'3','','Buck 3 on the book: Mini Rex.');
INSERT INTO "notes" VALUES(1,3,'terminal','4737f9b301844d5bad638e811d23c579',0,'me','2026-11-27 07:58:29.935065','bred 14 to 3 31 days ago',NULL,NULL,'14','to','Doe 14 bred to 3 (Tue 27 Oct).
Palpate Sun 8 Nov (overdue); nest box in Tue 24 Nov (overdue); kits due today.');
INSERT INTO "notes" VALUES(1,4,'terminal','82ea54a6a68f46aa9e6ceddce00f18c5',0,'me','2026-11-27 07:58:31.379077','14 kindled 8, 2 dead',NULL,NULL,'14','','Doe 14: 8 born, 6 alive, 2 dead.
Sire: buck 3.
Check the nest tomorrow; nest box out Tue 15 Dec.');
INSERT INTO "notes" VALUES(1,5,'terminal','0d82baf172314d70814cc01dab20544f',0,'me','2026-11-27 07:58:32.730815','14 weighed 8-2',NULL,'{"why": "impossible", "text": "8 lb 2 oz can''t be for 14, a Mini Rex. What does it weigh? Send it again with its units: \"14 4 lb 6 oz\".", "choices": [], "draft": {"kind": "weighed", "known": {"who": "14", "grams": 3685, "on": "2026-11-27"}, "wanted": "who", "rest": []}}','14','','8 lb 2 oz can''t be for 14, a Mini Rex. What does it weigh? Send it again with its units: "14 4 lb 6 oz".');
INSERT INTO "notes" VALUES(1,6,'terminal','55df669254a0436f94e7dd0001b62462',0,'me','2026-11-27 07:58:33.928117','undo',NULL,NULL,'14','','Dropped: “14 weighed 8-2”.');
INSERT INTO "notes" VALUES(1,7,'terminal','73159c3aeffa4b03bd6f93f7fe414795',0,'me','2026-11-27 07:58:35.158764','remind me tomorrow to buy hay',NULL,NULL,NULL,'','I will remind you: buy hay, Sat 28 Nov 2026.');
INSERT INTO "notes" VALUES(1,8,'terminal','1e84aca84af34ff7bb0ab8c01b1f3933',0,'me','2026-11-27 07:58:36.392076','reminders at 8 am',NULL,NULL,NULL,'','Reminders come at 08:00.');
CREATE TABLE outbox (
	id INTEGER NOT NULL, 
	farm_id INTEGER NOT NULL, 
	"key" TEXT NOT NULL, 
	chat TEXT NOT NULL, 
	payload TEXT NOT NULL, 
	state TEXT NOT NULL, 
	not_before DATETIME NOT NULL, 
	tries INTEGER NOT NULL, 
	claimed_by TEXT, 
	claimed_until DATETIME, 
	number TEXT, 
	CONSTRAINT pk_outbox PRIMARY KEY (id), 
	CONSTRAINT fk_outbox_farms FOREIGN KEY(farm_id) REFERENCES farms (id), 
	CONSTRAINT uq_outbox_farm_id_key UNIQUE (farm_id, "key")
);
INSERT INTO "outbox" VALUES(1,1,'update:7:1','1001','{"lines": ["Welcome. This farm''s book is yours now.", "Text me notes as things happen: ''new doe 14 mini rex born 3/4'', ''bred 14 to Flint'', ''14 kindled 8, 2 dead''. Ask ''who is due'' or ''help''."], "choices": [], "answers": "", "chores": [], "attached": [], "at": "2026-11-25T13:10:00+00:00", "note": null}','waiting','2026-11-25 13:10:00.000000',0,NULL,NULL,NULL);
INSERT INTO "outbox" VALUES(2,1,'one','1001','{"lines": ["Which doe?"], "choices": [{"label": "14", "key": "Rb39BeUM8Br7c1TL", "apart": false}], "answers": "", "chores": [], "attached": [], "at": "2026-11-25T13:10:00+00:00", "note": null}','waiting','2026-11-25 13:10:00.000000',0,NULL,NULL,NULL);
CREATE TABLE reversals (
	farm_id INTEGER NOT NULL, 
	note_id INTEGER NOT NULL, 
	place INTEGER NOT NULL, 
	target_note INTEGER NOT NULL, 
	target_index INTEGER, 
	CONSTRAINT pk_reversals PRIMARY KEY (farm_id, note_id, place), 
	CONSTRAINT fk_reversals_farms FOREIGN KEY(farm_id) REFERENCES farms (id), 
	CONSTRAINT fk_reversals_notes FOREIGN KEY(farm_id, note_id) REFERENCES notes (farm_id, id), 
	CONSTRAINT fk_reversals_target FOREIGN KEY(farm_id, target_note) REFERENCES notes (farm_id, id)
);
CREATE TABLE sent (
	farm_id INTEGER NOT NULL, 
	"key" TEXT NOT NULL, 
	day DATE NOT NULL, 
	put_at DATETIME NOT NULL, 
	CONSTRAINT pk_sent PRIMARY KEY (farm_id, "key", day), 
	CONSTRAINT fk_sent_farms FOREIGN KEY(farm_id) REFERENCES farms (id)
);
CREATE TABLE setup_codes (
	farm_id INTEGER NOT NULL, 
	hash TEXT NOT NULL, 
	role TEXT NOT NULL, 
	expires_at DATETIME NOT NULL, 
	used_at DATETIME, 
	CONSTRAINT pk_setup_codes PRIMARY KEY (farm_id, hash), 
	CONSTRAINT fk_setup_codes_farms FOREIGN KEY(farm_id) REFERENCES farms (id)
);
INSERT INTO "setup_codes" VALUES(1,'40f3f83c3253c762334e5ffbd45e169bdbfaed1c6569979f6e0c48b2867b3600','owner','2026-11-26 13:10:00.000000','2026-11-25 13:10:00.000000');
CREATE INDEX ix_inbox_farm_id_inbox_state_inbox_chat_inbox_update_id ON inbox (farm_id, state, chat, update_id);
CREATE INDEX ix_outbox_farm_id_outbox_state_outbox_chat_outbox_id ON outbox (farm_id, state, chat, id);
COMMIT;
