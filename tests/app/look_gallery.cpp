// SPDX-License-Identifier: GPL-3.0-or-later
// Draws every shared widget and every drawn thing to PNG, by day and in the evening, for the eye to judge.
//   look_gallery FOLDER          (QT_QPA_PLATFORM=offscreen, QT_SCALE_FACTOR=2 for twice the pixels)

#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/theme/wording_outline.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/chip.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/progress_beads.h"
#include "app/widgets/sewn_tabs.h"
#include "app/widgets/stepper.h"
#include "app/widgets/switch.h"
#include "app/widgets/vertical_scroll.h"

#include <QApplication>
#include <QBoxLayout>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QFontMetricsF>
#include <QGridLayout>
#include <QLineEdit>
#include <QPainter>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QSpinBox>
#include <QTableWidget>

#include <cstdio>
#include <functional>

using namespace holdfast::app;

namespace {

// The cloths and films of the pictures.
const QColor kMoss(0x6B, 0x76, 0x51);
const QColor kInk(0x34, 0x40, 0x5A);
const QColor kBrick(0x9B, 0x4A, 0x3A);
const QColor kRose(0xC9, 0x8F, 0x88);
const QColor kFog(0xC8, 0xCD, 0xCA);
const QColor kChalk(0xEF, 0xEC, 0xE0);
const QColor kReed(0xA9, 0xBD, 0xB0);
const QColor kOat(0xE2, 0xD6, 0xBE);
const QColor kSlate(0x5C, 0x67, 0x73);
const QColor kDusk(0x33, 0x47, 0x7A);
const QColor kGorse(0xD1, 0xA5, 0x2B);
const QColor kOyster(0xCF, 0xC6, 0xB4);
const QColor kInkCap(0x2E, 0x2A, 0x2B);

// A widget that only paints.
class Painted : public QWidget {
public:
    Painted(QSize size, std::function<void(QPainter&)> paint)
        : m_paint(std::move(paint)) {
        setFixedSize(size);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        m_paint(painter);
    }

private:
    std::function<void(QPainter&)> m_paint;
};

QHBoxLayout* row(std::initializer_list<QWidget*> widgets, int spacing = kSpace8) {
    auto* made = new QHBoxLayout;
    made->setSpacing(spacing);
    for (QWidget* widget : widgets) {
        made->addWidget(widget);
    }
    made->addStretch(1);
    return made;
}

Button* cannot(const QString& text, const QString& reason) {
    auto* made = new Button(text, Button::Kind::Primary);
    made->setCannot(reason);
    return made;
}

Button* keyed(const QString& text, const QString& iconName, const QString& key, int height = kTarget,
              Button::Kind kind = Button::Kind::Plain) {
    auto* made = new Button(text, iconName, kind);
    made->showKey(QKeySequence(key));
    made->setTargetHeight(height);
    return made;
}

QWidget* statesCard() {
    auto* card = new Card(QStringLiteral("States"));
    card->pad();
    card->content()->addLayout(
        row({new Chip("washed", "Washed", Tone::Plain), new Chip("unwashed", "Unwashed", Tone::Plain),
             new Chip("hold", "Held", Tone::Held), new Chip("caution", "Soon", Tone::Caution),
             new Chip("press-walk", "On the press", Tone::Working),
             new Chip("cooling", "Cooling", Tone::Working)}));
    card->content()->addLayout(row(
        {new Chip("resting", "Resting", Tone::Working), new Chip("ready", "Ready on the peg", Tone::Ready),
         new Chip("done", "Done", Tone::Ready), new Chip("offline", "Offline", Tone::Plain)}));
    auto* focused = new Button("Focus", Button::Kind::Primary);
    focused->setObjectName("focused");
    auto* checked = new Button("Open 15");
    checked->setCheckable(true);
    checked->setChecked(true);
    card->content()->addLayout(
        row({new Button("Rest", Button::Kind::Primary), focused,
             cannot("Can’t yet", "Two garments are still cooling"), new Button("Plain"), checked,
             new Button("Quiet", "undo", Button::Kind::Quiet)},
            kSpace12));
    auto* film = keyed("Oyster, smooth, R-21", {}, "F");
    film->setSwatch(kOyster);
    auto* list = new Button("Book serif");
    list->setOpensList(true);
    card->content()->addLayout(
        row({keyed("Receive a roll", "plus", "N", kTarget, Button::Kind::Quiet), film, list}));
    card->content()->addLayout(row(
        {keyed("Back a step", "undo", "B", kPressTarget), keyed("Hold garment", "hold", "H", kPressTarget),
         keyed("Start wash", "wash", "Ctrl+W", kPressTarget, Button::Kind::Primary)}));
    auto* next = new Button("Next: lift, let it cool", Button::Kind::Next);
    next->showKey(QKeySequence(Qt::Key_Space));
    card->content()->addWidget(next);
    auto* take = new Button("Take order", Button::Kind::Next);
    take->setSecondText("£10.00 now");
    take->showKey(QKeySequence(Qt::Key_Return));
    take->setFixedWidth(338);
    card->content()->addWidget(take);
    card->content()->addStretch(1);
    return card;
}

QWidget* fairColumn() {
    auto* card = new Card;
    card->pad(15, 14, kSpace8);
    card->setFixedWidth(398);
    card->content()->addWidget(new KeyHint("Style", QKeySequence("G")));
    auto* styles = new Choice("Style", Choice::Shape::Picture);
    styles->setColumns(4);
    QVector<ChoiceItem> items;
    for (const QString& outline : garmentOutlines()) {
        ChoiceItem item;
        item.text = outline == "long-sleeve" ? QStringLiteral("Long sleeve")
                                             : outline.left(1).toUpper() + outline.mid(1);
        item.outline = outline;
        item.shade = kOat;
        items.append(item);
    }
    styles->setItems(items);
    styles->setChosen(0);
    card->content()->addWidget(styles);
    card->content()->addSpacing(kSpace12);
    card->content()->addWidget(new KeyHint("Size", QKeySequence("S")));
    auto* sizes = new Choice("Size", Choice::Shape::Stacked);
    ChoiceItem none{.text = "XL", .second = "none"};
    none.isInStock = false;
    sizes->setItems({{.text = "XS", .second = "3 left"},
                     {.text = "S", .second = "6 left"},
                     {.text = "M", .second = "5 left"},
                     {.text = "L", .second = "2 left"},
                     none,
                     {.text = "2XL", .second = "1 left"}});
    sizes->setChosen(2);
    sizes->setObjectName("sizes");
    card->content()->addWidget(sizes);
    card->content()->addSpacing(kSpace12);
    card->content()->addWidget(new KeyHint("Colour, in M", QKeySequence("C")));
    auto* colours = new Choice("Colour", Choice::Shape::Swatch);
    colours->setColumns(2);
    const auto cloth = [](const QString& name, const QColor& shade, const QString& washed,
                          const QString& unwashed) {
        ChoiceItem item;
        item.text = name;
        item.shade = shade;
        item.marks = {{"washed", washed + " washed", &Tokens::green}, {"unwashed", unwashed}};
        return item;
    };
    ChoiceItem rose{.text = "Rose", .second = "none in stock", .shade = kRose};
    rose.isInStock = false;
    colours->setItems({cloth("Fog", kFog, "4", "2"), cloth("Ink", kInk, "2", "0"),
                       cloth("Moss", kMoss, "0", "5"), cloth("Brick", kBrick, "1", "3"),
                       cloth("Chalk", kChalk, "6", "4"), rose});
    colours->setChosen(2);
    card->content()->addWidget(colours);
    card->content()->addStretch(1);
    return card;
}

QWidget* decalCard() {
    auto* card = new Card;
    card->pad();
    auto* places = new Choice("Place", Choice::Shape::Segment);
    places->setItems({{.text = "Chest"}, {.text = "Left chest"}, {.text = "Back"}, {.text = "Sleeve"}});
    places->setChosen(0);
    card->content()->addWidget(places);
    auto* art = new Choice("Decal", Choice::Shape::Artwork);
    QVector<ChoiceItem> items;
    for (const QString& artwork : artworks()) {
        items.append({.text = artwork, .artwork = artwork});
    }
    art->setItems(items);
    art->setChosen(2);
    card->content()->addWidget(art);
    auto* name = new Field("Name");
    name->setText("Juno");
    name->setObjectName("name");
    name->showKey(QKeySequence("N"));
    auto* face = new QComboBox;
    face->addItems({"Book serif", "Plain sans"});
    card->content()->addLayout(row({name, face}));
    auto* wrong = new Field("Dwell");
    wrong->setText("120");
    wrong->setSuffix("s");
    wrong->setError("Dwell is 1 to 60 s. The film maker’s sheet for Marram Soft says 12 s, and no film here "
                    "takes more than 30.");
    auto* found = new Field;
    found->setIconName("search");
    found->setPlaceholder("Name, number, decal, shade or “owes”");
    found->showKey(QKeySequence("Ctrl+F"));
    card->content()->addWidget(wrong);
    card->content()->addWidget(found);
    card->content()->addWidget(new Banner(Tone::Ready, "Smooth film on cotton, fits.", "150 °C for 12 s"));
    card->content()->addWidget(
        new Banner(Tone::Caution, "Name strokes are 2.1 mm.", "Under 2.0 will not weed"));
    auto* held = new Banner(Tone::Held, "Roll R-17 is past its use-by by 6 days.",
                            "Rosehip, Oxlip Flock, was to be used by 5 November; a strip that peels clean "
                            "gives it 30 more days.");
    held->setAction("Press a test strip", "test-strip");
    card->content()->addWidget(held);
    auto* unwashed = new Banner(Tone::Held, "Unwashed.", "417-a");
    unwashed->setAction("Put in the wash", "wash");
    card->content()->addWidget(unwashed);
    card->content()->addStretch(1);
    return card;
}

QWidget* factsCard() {
    auto* card = new Card;
    card->setTitle("Held", "hold");
    card->setTitleInk(&Tokens::madder);
    card->setCount("2");
    card->pad();
    auto* facts = new QGridLayout;
    const auto fact = [](const QString& label, const QString& value, const QString& note,
                         Role ink = &Tokens::ink) {
        auto* block = new FactBlock(label);
        block->set(value, note, ink);
        return block;
    };
    facts->addWidget(fact("Calendar age", "11 months 4 days", "made 7 Dec 2025"), 0, 0);
    facts->addWidget(fact("Age by warmth", "11 months 16 days", "12 days added by heat", &Tokens::weld), 0,
                     1);
    facts->addWidget(fact("Use-by", "2 Dec 2026", "maker says 14 Dec"), 1, 0);
    facts->addWidget(fact("Outside 30–50 % RH", "61 h", "2 spells since 14 Oct", &Tokens::weld), 1, 1);
    card->content()->addLayout(facts);
    card->content()->addWidget(new ThreadLine);
    auto* gap = new Stepper("Gap");
    gap->setSuffix(" mm");
    gap->setValue(8);
    auto* none = new Stepper("Count");
    auto* on = new Switch("Cut a frame");
    on->setChecked(true);
    auto* off = new Switch("Keep offcuts");
    auto* dead = new Switch("Print a sheet");
    dead->setEnabled(false);
    card->content()->addLayout(row({new Label("Gap"), gap, none}));
    card->content()->addLayout(row({new Label("Cut a frame", Type::BodyStrong), on, off, dead}, kSpace12));
    card->content()->addLayout(row({new QCheckBox("Confirmed"), [] {
                                        auto* box = new QCheckBox("Washed");
                                        box->setChecked(true);
                                        return box;
                                    }()}));
    auto* spin = new QSpinBox;
    spin->setValue(150);
    spin->setMaximum(400);
    spin->setSuffix(" °C");
    auto* line = new QLineEdit("A plain line");
    card->content()->addLayout(row({spin, line}));
    auto* note = new QPlainTextEdit("Marram Soft took 152 °C on the left of the platen, 149 on the right.");
    note->setFixedHeight(64);
    card->content()->addWidget(note);
    auto* bar = new QProgressBar;
    bar->setRange(0, 34);
    bar->setValue(25);
    bar->setTextVisible(false);
    bar->setFixedHeight(14);
    card->content()->addWidget(bar);
    auto* beads = new ProgressBeads;
    beads->set(9, 18, "9 of 18 pressed");
    auto* many = new ProgressBeads;
    many->set(40, 64, "40 of 64 pressed");
    card->content()->addWidget(beads);
    card->content()->addWidget(many);
    card->content()->addWidget(
        new KeyHint("adds to the wash", QKeySequence("W"), KeyHint::Order::KeyThenWords));
    card->content()->addWidget(new ElidingLabel(
        "A long note about a fair far up the coast that does not fit here at all, nor anywhere", Type::Small,
        &Tokens::ink2));
    card->content()->addStretch(1);
    return card;
}

QWidget* tabsColumn() {
    auto* column = new QWidget;
    auto* layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    auto* tabs = new SewnTabs("Films");
    tabs->setTabs({{"Dusk", "R-09, 9 to cut", kDusk},
                   {"Oyster", "R-21, 3 to cut", kOyster},
                   {"Gorse", "R-12, 2 to cut", kGorse}});
    tabs->setCurrent(0);
    auto* card = new Card;
    tabs->sewOnto(card);
    layout->addWidget(tabs);
    layout->addWidget(card, 1);
    auto* scroll = new VerticalScroll;
    for (int at = 0; at < 6; ++at) {
        scroll->column()->addWidget(new Painted({420, 60}, [at](QPainter& painter) {
            const QRectF box(0, 0, 420, 60);
            if (at == 1) {
                painter.fillRect(box, tokens().woad);
                paintOutline(painter, box, 0, tokens().indigo, 2);
            }
            paintKnot(painter, QPointF(22, 30),
                      at == 0   ? Knot::Done
                      : at == 1 ? Knot::Current
                                : Knot::Planned,
                      21);
            paintGarment(painter, QRectF(50, 12, 34, 36), at % 2 ? "hoodie" : "tee", at % 2 ? kReed : kInk);
            const qreal x = paintRun(painter, QPointF(96, 26), "418-b", Type::BodyStrong, tokens().ink);
            paintRun(painter, QPointF(x + 5, 26), "Zip hoodie, M, Reed", Type::Body, tokens().ink);
            paintRun(painter, QPointF(96, 45), "Tern, left chest", Type::Small, tokens().ink2);
            painter.fillRect(QRectF(0, 59, 420, 1), tokens().thread);
        }));
    }
    scroll->setFixedHeight(230);
    card->content()->addWidget(scroll);
    auto* table = new QTableWidget(2, 3);
    table->setHorizontalHeaderLabels({"No.", "Customer", "Promised"});
    table->setItem(0, 0, new QTableWidgetItem("427"));
    table->setItem(0, 1, new QTableWidgetItem("Teo Lindqvist"));
    table->setItem(1, 0, new QTableWidgetItem("426"));
    table->selectRow(1);
    table->setFixedHeight(120);
    card->content()->addWidget(table);
    card->content()->addWidget(new EmptyState("film-shelf",
                                              "Rolls of film will stand here, the first to use at the top.",
                                              "Receive a roll"),
                               1);
    return column;
}

QWidget* drawingsCard() {
    auto* card = new Card("Drawn things");
    card->setNote("by cloth, film and stitch");
    card->setTitleHeight(48);
    card->addToTitle(keyed("Receive a roll", "plus", "N", kTarget, Button::Kind::Quiet));
    card->pad();
    card->content()->addWidget(new Painted({620, 620}, [](QPainter& painter) {
        const Tokens& dyes = tokens();
        const QVector<QColor> cloths = {kMoss, kInk, kReed, kOat, kChalk, kRose, kBrick, kSlate};
        qreal x = 0;
        int at = 0;
        for (const QString& outline : garmentOutlines()) {
            paintGarment(painter, QRectF(x, 0, 72, 78), outline, cloths[at++]);
            x += 76;
        }
        painter.fillRect(QRectF(0, 90, 300, 320), dyes.sunk);
        const QRectF box(10, 96, 280, 308);
        paintGarment(painter, box, "tee", kMoss);
        const QRectF sheet = garmentSheet(box);
        const double unit = sheet.width() / kGarmentSheetWidth;
        const QRectF body = garmentBody("tee");
        paintRunningStitch(painter, sheet.topLeft() + body.topLeft() * unit,
                           sheet.topLeft() + body.topRight() * unit, dyes.card, 1.2);
        const double perMillimetre = unit / millimetresPerUnit("tee", "M");
        const double high = 280 * perMillimetre;
        const double wide = high * artworkAspect("heron");
        const QRectF heron(sheet.left() + 120 * unit - wide / 2,
                           sheet.top() + body.top() * unit + 75 * perMillimetre, wide, high);
        paintDecal(painter, heron, "heron", kOyster);
        paintOutline(painter, heron, 0, dyes.card, 1.2, true);
        paintWording(painter, QRectF(heron.left() - 10, heron.bottom() + 8, wide + 20, 26),
                     holdfast::Wording{"Juno"}, kOyster);
        x = 330;
        for (const double metres : {0.8, 1.1, 3.4, 5.2, 9.6}) {
            paintRoll(painter, QPointF(x, 140), metres,
                      metres < 1   ? kGorse
                      : metres < 2 ? kBrick
                      : metres < 4 ? kDusk
                      : metres < 6 ? kInkCap
                                   : kChalk);
            x += 52;
        }
        x = 316;
        for (const QColor& film : {kDusk, kOyster, kGorse, kInkCap, kChalk}) {
            paintSwatch(painter, QRectF(x, 180, 40, 40), film, 6);
            x += 48;
        }
        paintThread(painter, QPointF(316, 244), QPointF(420, 244), dyes.indigo);
        paintRunningStitch(painter, QPointF(440, 244), QPointF(560, 244), dyes.edge);
        for (int stitch = 0; stitch < 6; ++stitch) {
            paintStitch(painter, QRectF(316 + stitch * 47, 262, 39, 13), dyes.indigo, stitch < 3);
        }
        paintBox(painter, QRectF(316, 292, 80, 62), 8, dyes.ground, {});
        paintSewnLabel(painter, QRectF(316, 292, 80, 62), dyes.indigo, 8);
        QPainterPath damp;
        damp.addRect(QRectF(416, 310, 120, 10));
        paintHatch(painter, damp, dyes.weldHatch);
        QPainterPath past;
        past.addRect(QRectF(416, 330, 120, 24));
        paintHatch(painter, past, dyes.madder);
        painter.fillRect(QRectF(548, 292, 64, 64), dyes.rail);
        paintMark(painter, QRectF(556, 300, 48, 48), dyes.railInk);
        x = 316;
        for (const QString& artwork : artworks()) {
            paintDecal(painter, QRectF(x, 372, 36, 36), artwork, dyes.ink);
            x += 42;
        }
        at = 0;
        for (const QString& name : QDir(":/icons").entryList(QDir::Files, QDir::Name)) {
            paintIcon(painter, QRectF(4 + (at % 18) * 34, 430 + (at / 18) * 34, 24, 24), name.chopped(4),
                      dyes.ink);
            ++at;
        }
        paintLine(painter, QRectF(0, 540, 400, 60), "Press  150 °C · medium", Type::Next, dyes.ink);
    }));
    card->content()->addStretch(1);
    return card;
}

QWidget* typeCard() {
    auto* card = new Card("Type");
    card->pad();
    const QVector<std::pair<Type, QString>> scale = {{Type::Panel, "Press 10:21"},
                                                     {Type::Next, "Next: peel"},
                                                     {Type::PlaceTitle, "Press walk"},
                                                     {Type::Number, "418-b £26.50"},
                                                     {Type::CardTitle, "Cooling rack"},
                                                     {Type::Value, "11 months 4 days"},
                                                     {Type::List, "Lint roll"},
                                                     {Type::BodyStrong, "Put in the wash"},
                                                     {Type::Body, "Body 0123456789"},
                                                     {Type::Support, "maker says 14 Dec"},
                                                     {Type::SmallStrong, "Held, unwashed"},
                                                     {Type::Small, "two spells since 14 Oct"}};
    for (const auto& [type, words] : scale) {
        card->content()->addWidget(new Label(words, type));
    }
    card->content()->addStretch(1);
    return card;
}

void draw(QWidget& page, const QString& file, const QString& focused) {
    page.show();
    page.activateWindow();
    QApplication::processEvents();
    if (auto* widget = page.findChild<QWidget*>(focused)) {
        widget->setFocus(Qt::TabFocusReason);
    }
    QApplication::processEvents();
    if (!page.grab().save(file)) {
        std::fprintf(stderr, "could not write %s\n", qPrintable(file));
    }
    page.hide();
}

} // namespace

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    if (argc != 2 || !QDir().mkpath(QString::fromLocal8Bit(argv[1]))) {
        std::fprintf(stderr, "usage: look_gallery FOLDER\n");
        return 2;
    }
    const QString folder = QString::fromLocal8Bit(argv[1]);
    setLight(application, Light::Day);

    // Built once by day; the evening is the same widgets under a changed light.
    QWidget first;
    auto* firstRow = new QHBoxLayout(&first);
    firstRow->setContentsMargins(kGutter, kGutter, kGutter, kGutter);
    firstRow->setSpacing(kCardGap);
    firstRow->addWidget(fairColumn());
    firstRow->addWidget(decalCard());
    firstRow->addWidget(factsCard());
    first.resize(1366, 768);

    QWidget second;
    auto* secondRow = new QHBoxLayout(&second);
    secondRow->setContentsMargins(kGutter, kGutter, kGutter, kGutter);
    secondRow->setSpacing(kCardGap);
    secondRow->addWidget(statesCard());
    secondRow->addWidget(drawingsCard());
    second.resize(1366, 768);

    QWidget third;
    auto* thirdRow = new QHBoxLayout(&third);
    thirdRow->setContentsMargins(kGutter, kGutter, kGutter, kGutter);
    thirdRow->setSpacing(kCardGap);
    thirdRow->addWidget(tabsColumn());
    thirdRow->addWidget(typeCard());
    third.resize(1000, 768);

    for (const Light wanted : {Light::Day, Light::Evening}) {
        setLight(application, wanted);
        const QString prefix = folder + (wanted == Light::Day ? "/day" : "/evening");
        draw(first, prefix + "-1.png", "name");
        draw(second, prefix + "-2.png", "focused");
        draw(third, prefix + "-3.png", {});
    }
    return 0;
}
