// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/decal_panel.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/film_list.h"
#include "app/places/fair_table/message_scroll.h"
#include "app/places/fair_table/price_panel.h"
#include "app/places/fair_table/table_measures.h"
#include "app/places/fair_table/team_garments.h"
#include "app/places/fair_table/team_panel.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/vertical_scroll.h"

#include <QApplication>
#include <QFontMetricsF>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QStackedLayout>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kNarrowestFilm = 200; // less is a row of its own
constexpr int kFilmsHigh = 268;     // their list, where it need not fit into other rows
constexpr int kMargin = 14;
constexpr int kTileWide = 53;
constexpr int kTileNarrow = 44; // seven artworks on a narrow window

// The shop's drawings: those of the coast first, in the order of the drawer, then whatever else was added.
const QStringList& drawings() {
    static const QStringList names = [] {
        QStringList ordered{QStringLiteral("tern"),     QStringLiteral("heron"), QStringLiteral("waves"),
                            QStringLiteral("samphire"), QStringLiteral("boat"),  QStringLiteral("fish"),
                            QStringLiteral("thimble")};
        for (const QString& name : artworks())
            if (!ordered.contains(name))
                ordered.append(name);
        return ordered;
    }();
    return names;
}

} // namespace

DecalPanel::DecalPanel(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_pages(new QStackedLayout(this))
    , m_films(new FilmList) {
    m_pages->addWidget(buildPicks());
    m_pages->addWidget(m_films);
    m_films->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored); // as high as what it covers
    m_team = new TeamPanel;
    m_pages->addWidget(m_team);
    m_price = new PricePanel(m_model);
    m_pages->addWidget(m_price);
    m_price->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored);
    m_team->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connectPicks();
}

QWidget* DecalPanel::buildPicks() {
    m_artworks = new Choice(tr("Decal"), Choice::Shape::Artwork);
    m_artworks->setObjectName(QStringLiteral("artwork"));
    QVector<ChoiceItem> items;
    for (const QString& name : drawings()) {
        QString shown = name;
        shown[0] = shown[0].toUpper();
        items.append({.text = shown, .artwork = name});
    }
    m_artworks->setItems(items);

    m_another = new Button(tr("Add"), QStringLiteral("plus"), Button::Kind::Quiet);
    m_another->setObjectName(QStringLiteral("anotherDecal"));
    m_another->setKey(Qt::Key_A);
    m_another->setToolTip(tr("Another decal on this garment"));
    m_another->setAccessibleName(m_another->toolTip());
    m_another->setTargetHeight(kStallTarget);
    keepRoom(m_another);
    m_film = new Button({}, Button::Kind::Plain);
    m_film->setObjectName(QStringLiteral("film"));
    m_film->setKey(Qt::Key_F);
    m_film->setLeftAligned(true);
    m_film->setTargetHeight(kStallTarget);
    m_film->setSizePolicy(QSizePolicy::Expanding,
                          QSizePolicy::Fixed); // stays where it is, whatever its words
    m_artworks->setMinimumWidth(1);            // its tiles follow the window
    m_words = new Field(tr("Wording"));
    m_words->setObjectName(QStringLiteral("words"));
    m_words->setKey(Qt::Key_N);
    m_words->editor()->setMaxLength(200);
    m_face = new Choice(tr("Lettering"), Choice::Shape::Segment);
    m_face->setObjectName(QStringLiteral("face"));
    m_face->setItems({{.text = tr("Serif")}, {.text = tr("Plain")}});
    m_face->keepInOneLine();
    makeTall(m_face);

    auto* heading = new KeyHint(tr("Decal"), Qt::Key_D);
    heading->jumpTo(m_artworks);
    auto* begin = new QHBoxLayout;
    begin->addWidget(heading);
    begin->addWidget(m_another);
    begin->addStretch();
    m_filmRow = new QHBoxLayout;
    m_filmRow->setSpacing(kSpace8);
    m_filmRow->addLayout(begin);
    m_filmRow->addWidget(m_film, 1);
    m_wordsRow = new QHBoxLayout;
    m_wordsRow->setSpacing(kSpace8);
    m_wordsRow->addWidget(m_words, 1);
    m_wordsRow->addWidget(m_face, 0, Qt::AlignTop);

    m_messages = new MessageScroll;
    auto* picks = new QWidget;
    m_column = new QVBoxLayout(picks);
    m_column->setContentsMargins(kMargin, kSpace8, kMargin, kSpace12);
    m_column->setSpacing(kSpace8);
    m_column->addLayout(m_filmRow);
    m_column->addWidget(m_artworks);
    m_column->addLayout(m_wordsRow);
    takeMessages();
    return picks;
}

void DecalPanel::takeMessages() {
    m_column->addWidget(m_messages);
    m_messages->setVisible(true);
}

void DecalPanel::connectPicks() {
    connect(m_artworks, &Choice::chosen, this, [this](int at) {
        const std::string name = plain(drawings()[at]);
        m_model.editWithFilm(Step::Choice,
                             [&](TableDraft& draft) { chooseArtwork(draft, m_model.style(), name); });
    });
    connect(m_another, &QAbstractButton::clicked, this, [this] {
        m_model.turn(beginDecal);
        m_artworks->takeFocus();
    });
    connect(m_film, &QAbstractButton::clicked, this, &DecalPanel::openFilms);
    connect(m_words, &Field::edited, this, [this](const QString& text) {
        // What would be cut is what is not blank; the field keeps what is typed.
        const std::string words = text.trimmed().isEmpty() ? std::string{} : text.toStdString();
        m_model.editWithFilm(Step::Words,
                             [&](TableDraft& draft) { typeWords(draft, m_model.style(), words); });
    });
    connect(m_words, &Field::finished, this, [this] { m_model.endStep(); });
    connect(m_face, &Choice::chosen, this, [this](int at) {
        m_model.edit(Step::Choice,
                     [&](TableDraft& draft) { chooseFace(draft, at == 0 ? Face::BookSerif : Face::Plain); });
    });
    connect(m_messages, &MessageScroll::spotTaken, this,
            [this](std::size_t garment, std::size_t decal, const DecalSpot& spot) {
                m_model.edit(Step::Choice, [&](TableDraft& draft) { takeSpot(draft, garment, decal, spot); });
            });
    connect(m_messages, &MessageScroll::makingAgainAsked, this, [this](std::size_t garment) {
        m_model.edit(Step::Choice, [&](TableDraft& draft) { draft.garments.at(garment).isMadeAgain = true; });
    });
    connect(m_messages, &MessageScroll::sameAgainAsked, this, &DecalPanel::addSameAgain);
    connect(m_messages, &MessageScroll::teamListAsked, this, &DecalPanel::openTeam);
    connectFilms();
    connectTeam();
}

void DecalPanel::openPrice() {
    m_price->setMinimumHeight(m_isWhole ? kFilmsHigh : 0);
    m_pages->setCurrentWidget(m_price);
    m_price->begin();
    if (m_isWhole)
        QTimer::singleShot(0, m_price, [this] { showInColumn(m_price); });
}

void DecalPanel::connectTeam() {
    connect(m_price, &PricePanel::closed, this, [this] {
        m_model.endStep();
        showPicks();
        emit keyboardFreed();
    });
    connect(m_team, &TeamPanel::closed, this, [this] {
        showPicks();
        m_artworks->takeFocus();
    });
    connect(m_team, &TeamPanel::added, this, [this] {
        m_model.addTeam(m_team->lines());
        showPicks();
        emit keyboardFreed();
    });
}

void DecalPanel::addSameAgain() {
    m_model.endStep();
    m_model.edit(Step::Choice, repeatGarment);
    m_words->setFocus(Qt::ShortcutFocusReason);
    m_words->selectAll();
}

void DecalPanel::openTeam() {
    const TableDraft& draft = m_model.draft();
    const auto at = patternAt(draft);
    const BlankStyle* style = at ? m_model.shop().facts.styles.find(draft.garments[*at].style) : nullptr;
    if (!style) {
        m_model.desk().say(tr("Choose the garment first; the list says names, numbers and sizes."));
        return;
    }
    const TableGarment& pattern = draft.garments[*at];
    TeamPanel::Pattern asked;
    asked.words = garmentWords(pattern, m_model.shop().facts);
    asked.sizes = style->sizes;
    asked.size = pattern.size;
    asked.check = [this](std::vector<TeamLine> lines) { return m_model.checkedTeam(std::move(lines)); };
    asked.stock = [this, colour = pattern.colour, kind = pattern.style](const std::string& size) {
        return m_model.stockOf(kind, size, colour);
    };
    m_team->setMinimumHeight(m_isWhole ? kFilmsHigh : 0);
    m_pages->setCurrentIndex(2);
    m_team->begin(std::move(asked));
    if (m_isWhole)
        QTimer::singleShot(0, m_team, [this] { showInColumn(m_team); });
}

void DecalPanel::connectFilms() {
    connect(m_films, &FilmList::chosen, this, [this](FilmId film, bool isAlone) {
        m_model.edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, film, isAlone); });
        closeFilms();
    });
    connect(m_films, &FilmList::closed, this, &DecalPanel::closeFilms);
    // The list is open only while it has the keyboard.
    connect(m_films, &FilmList::left, this, &DecalPanel::showPicks);
}

void DecalPanel::refresh() {
    if (m_model.taken())
        showPicks();
    refreshArtworks();
    refreshFilm();
    refreshWords();
    if (m_pages->currentWidget() == m_price)
        m_price->refresh();
    m_messages->show(m_model.messages(), m_model.desk());
}

void DecalPanel::refreshArtworks() {
    int chosen = -1;
    if (const TableDecal* decal = artworkShown(m_model.draft()))
        chosen = static_cast<int>(drawings().indexOf(words(std::get<Artwork>(decal->decal.content).name)));
    if (m_artworks->chosenAt() != chosen)
        m_artworks->setChosen(chosen);
    m_another->setVisible(!m_model.draft().garment().decals.empty() && !m_model.draft().isAdding);
}

void DecalPanel::refreshFilm() {
    const TableDraft& draft = m_model.draft();
    const TableDecal* decal = draft.decal();
    const Film* film = m_model.shop().facts.films.find(decal ? decal->decal.film : draft.nextFilm);
    if (!film) {
        m_film->setText(std::ranges::all_of(m_model.shop().facts.films, &Film::isRetired)
                            ? tr("No films yet")
                            : tr("Choose a film"));
        m_film->setSwatch({});
        m_film->setToolTip({});
        return;
    }
    const RollPick* pick = decal ? &m_model.sums().rolls[draft.garmentAt][*draft.decalAt] : nullptr;
    const QString roll = pick && pick->roll ? QStringLiteral(", ") + words(pick->roll->label()) : QString();
    const QString name = words(film->name());
    // What does not fit is whole in the list and the tool tip: first the finish goes, then the shade's
    // end.
    const QFontMetricsF metrics(fontOf(Type::BodyStrong));
    m_film->setSwatch(colourOf(film->rgb));
    m_film->setText(name);
    const double besideText = m_film->sizeHint().width() - std::ceil(metrics.horizontalAdvance(name));
    const double room = std::max(40.0, m_film->width() - besideText - metrics.horizontalAdvance(roll));
    const QString fitting = metrics.horizontalAdvance(name) <= room ? name : words(film->shade);
    m_film->setText(metrics.elidedText(fitting, Qt::ElideRight, room) + roll);
    m_film->setToolTip(name + roll);
}

void DecalPanel::refreshWords() {
    const TableDecal* decal = wordsShown(m_model.draft());
    const Wording* wording = decal ? &std::get<Wording>(decal->decal.content) : nullptr;
    const QString text = wording ? words(wording->text) : QString();
    // Blanks only are no words, but they stay where they are typed.
    if (m_words->text() != text &&
        !(text.isEmpty() && m_words->editor()->hasFocus() && m_words->text().trimmed().isEmpty()))
        m_words->setText(text);
    const int face = (wording ? wording->face : m_model.draft().nextFace) == Face::BookSerif ? 0 : 1;
    if (m_face->chosenAt() != face)
        m_face->setChosen(face);
}

void DecalPanel::setWordsError(const QString& words) {
    if (m_words->error() != words)
        m_words->setError(words);
}

void DecalPanel::openFilms() {
    const TableDraft& draft = m_model.draft();
    if (std::ranges::all_of(m_model.shop().facts.films, &Film::isRetired)) {
        emit m_model.desk().slipAsked(SlipName::AddFilm, {});
        return;
    }
    const TableDecal* decal = draft.decal();
    m_films->show(filmOffers(m_model.shop(), m_model.style(), decal ? &decal->decal : nullptr),
                  m_model.desk().shop(), m_model.style() != nullptr,
                  decal ? decal->decal.film : draft.nextFilm);
    const auto count = draft.garment().decals.size();
    if (filmGoesToAll(draft))
        m_films->setReach(count == 2 ? tr("for both decals") : tr("for all %1 decals").arg(count),
                          decal ? tr("only %1").arg(decalWords(decal->decal.content)) : QString());
    else
        m_films->setReach(
            decal ? tr("for %1").arg(decalWords(decal->decal.content)) : tr("for the next decal"), {});
    if (!areFilmsOpen())
        m_beforeFilms = QApplication::focusWidget();
    m_films->setMinimumHeight(m_isWhole ? kFilmsHigh : 0);
    m_pages->setCurrentIndex(1);
    m_films->takeFocus();
    // With the keys below the list, once it is laid out.
    if (m_isWhole)
        QTimer::singleShot(0, m_films, [this] { showInColumn(m_films); });
}

void DecalPanel::showInColumn(QWidget* page) {
    for (QWidget* around = parentWidget(); around; around = around->parentWidget())
        if (auto* scroll = qobject_cast<VerticalScroll*>(around))
            scroll->ensureWidgetVisible(page, 0, 0);
}

bool DecalPanel::areFilmsOpen() const {
    return m_pages->currentIndex() == 1;
}

void DecalPanel::closeFilms() {
    showPicks();
    const bool isThere = m_beforeFilms && m_beforeFilms->isVisible() && m_beforeFilms->isEnabled();
    QWidget* next = isThere ? m_beforeFilms.data() : m_film;
    next->setFocus(Qt::OtherFocusReason);
}

void DecalPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const auto tiles = m_artworks->findChildren<QAbstractButton*>();
    const int room = width() - 2 * kMargin;
    const int count = static_cast<int>(tiles.size());
    const bool isNarrow = room < count * (kTileWide + kSpace8) - kSpace8;
    const int wide = isNarrow ? kTileNarrow : kTileWide;
    for (QAbstractButton* tile : tiles)
        tile->setFixedWidth(wide);
    m_artworks->setColumns(std::clamp((room + kSpace8) / (wide + kSpace8), 1, count));
    const bool isFilmBelow = m_filmRow->itemAt(0)->minimumSize().width() + kSpace8 + kNarrowestFilm > room;
    m_filmRow->setDirection(isFilmBelow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    const int abreast = m_words->minimumSizeHint().width() + kSpace8 + m_face->sizeHint().width();
    m_wordsRow->setDirection(abreast > room ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_another->setText(isNarrow ? QString() : tr("Add"));
    refreshFilm();
}

void DecalPanel::showPicks() {
    m_films->setMinimumHeight(0);
    m_team->setMinimumHeight(0);
    m_price->setMinimumHeight(0);
    m_pages->setCurrentIndex(0);
}

void DecalPanel::takeFocus(Section section) {
    showPicks();
    if (section == Section::Words)
        m_words->setFocus(Qt::ShortcutFocusReason);
    else if (section == Section::Film)
        openFilms();
    else
        m_artworks->takeFocus();
}

} // namespace holdfast::app
