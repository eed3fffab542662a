#include "app/shell/finder_entries.h"

#include "app/desk/formats.h"
#include "app/shell/finder_papers.h"
#include "app/shell/places.h"
#include "app/theme/tokens.h"
#include "core/cutting/nest.h"
#include "db/tables/order_book.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kMostOrders = 12;

class FinderWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FinderWords)

public:
    static QString kind(FinderKind kind) {
        switch (kind) {
        case FinderKind::Place:
            return tr("Place");
        case FinderKind::Action:
            return tr("Action");
        case FinderKind::Order:
            return tr("Order");
        case FinderKind::Roll:
            return tr("Roll");
        case FinderKind::Lot:
            return tr("Lot");
        }
        return {};
    }

    static std::vector<FinderEntry> places() {
        std::vector<FinderEntry> entries;
        for (const BuiltPlace& place : builtPlaces())
            entries.push_back({.kind = FinderKind::Place,
                               .title = place.words(),
                               .second = {},
                               .iconName = place.icon(),
                               .shade = {},
                               .keys = place.keys(),
                               .target = GoTo{place.name, {}}});
        return entries;
    }

    // Fairs of the list, the latest first, to be changed.
    static std::vector<FinderEntry> fairs(ShopDesk& desk) {
        std::vector<FinderEntry> entries;
        std::vector<const Fair*> fairs;
        for (const Fair& fair : desk.shop()->facts.fairs)
            fairs.push_back(&fair);
        std::ranges::sort(fairs, std::ranges::greater{}, &Fair::firstDay);
        for (const Fair* fair : fairs) {
            Matter matter;
            matter.fair = fair->id;
            entries.push_back({.kind = FinderKind::Action,
                               .title = tr("Change the fair %1").arg(words(fair->name)),
                               .second = fair->days() == 1
                                             ? date(fair->firstDay)
                                             : tr("%1 to %2").arg(date(fair->firstDay), date(fair->lastDay)),
                               .iconName = QStringLiteral("fair-table"),
                               .shade = {},
                               .keys = {},
                               .target = AskSlip{SlipName::ChangeFair, matter}});
        }
        return entries;
    }

    static std::vector<FinderEntry> actions(ShopDesk& desk) {
        std::vector<FinderEntry> entries;
        const auto add = [&](const QString& title, const QString& second, const QString& icon,
                             const QKeySequence& keys, FinderTarget target) {
            entries.push_back({.kind = FinderKind::Action,
                               .title = title,
                               .second = second,
                               .iconName = icon,
                               .shade = {},
                               .keys = keys,
                               .target = std::move(target)});
        };
        const auto slip = [&](SlipName name, const QString& title, const QString& second,
                              const QString& icon) {
            add(title, second, icon, {}, AskSlip{name, {}});
        };
        const auto act = [&](ShellAct name, const QString& title, const QString& second, const QString& icon,
                             const QKeySequence& keys) { add(title, second, icon, keys, name); };
        const auto errand = [&](Errand name, const QString& title, const QString& second,
                                const QString& icon) { add(title, second, icon, {}, name); };
        slip(SlipName::RecordReading, tr("Record a reading"),
             tr("humidity and temperature of a storage place"), QStringLiteral("humidity"));
        slip(SlipName::ImportReadings, tr("Import readings"), tr("the file of a climate logger"),
             QStringLiteral("thermometer"));
        slip(SlipName::ReceiveRoll, tr("Receive a roll"), tr("film onto the shelf"), QStringLiteral("roll"));
        slip(SlipName::ReceiveBlanks, tr("Receive blanks"), tr("a delivery onto the rail"),
             QStringLiteral("blank-rail"));
        slip(SlipName::MarkDry, tr("Mark a load dry"), tr("washed blanks"), QStringLiteral("washed"));
        slip(SlipName::CheckPress, tr("Check a press"), tr("temperatures at the marked spots"),
             QStringLiteral("press-walk"));
        slip(SlipName::AddFilm, tr("Add a film"), tr("finish, shade and its recipe"),
             QStringLiteral("film-shelf"));
        slip(SlipName::AddStyle, tr("Add a blank style"), tr("a garment to decorate"), QStringLiteral("tag"));
        slip(SlipName::AddPress, tr("Add a press"), tr("its platen and how it heats"),
             QStringLiteral("press-walk"));
        slip(SlipName::AddFair, tr("Add a fair"), tr("days, hours and costs of a stall"),
             QStringLiteral("fair-table"));
        slip(SlipName::Settings, tr("Settings"), tr("shop, prices, opening hours, washing, cutting, rest"),
             QStringLiteral("back-room"));
        entries.push_back(daySheetEntry());
        if (const auto last = desk.file().lastUndoable())
            act(ShellAct::Undo, tr("Undo"), words(last->title), QStringLiteral("undo"),
                QKeySequence(QKeySequence::Undo));
        const bool isDay = light() == Light::Day;
        act(ShellAct::ChangeLight, isDay ? tr("Evening light") : tr("Day light"),
            isDay ? tr("dark cloth, for a dim workshop") : tr("undyed cloth, for a bright workshop"),
            QStringLiteral("resting"), QKeySequence(Qt::Key_F6));
        errand(Errand::BackUp, tr("Back up the shop"), tr("a whole copy in one new file"),
               QStringLiteral("shelf-away"));
        errand(Errand::CheckFile, tr("Check the shop file"), tr("its ledgers and its journal"),
               QStringLiteral("done"));
        errand(Errand::OpenAnother, tr("Open another shop"), tr("a file, a new shop, or the demo"),
               QStringLiteral("order-book"));
        errand(Errand::TakeInNews, tr("Take in news"), tr("what was done on another laptop"),
               QStringLiteral("offline"));
        errand(Errand::WriteNews, tr("Write news"), tr("what another laptop has not got yet"),
               QStringLiteral("offline"));
        errand(Errand::CopyForLaptop, tr("Copy for a laptop"), tr("the shop, for a second laptop"),
               QStringLiteral("offline"));
        return entries;
    }

    static FinderEntry order(const db::OrderLine& line, const Currency& currency, LocalDate today) {
        QString state;
        switch (line.state) {
        case OrderState::Quoted:
            state = tr("quoted");
            break;
        case OrderState::Confirmed:
            state = tr("promised %1").arg(dayNear(dateOf(line.promised), today));
            break;
        case OrderState::HandedOver:
            state = tr("handed over");
            break;
        case OrderState::Cancelled:
            state = tr("cancelled");
            break;
        }
        QString second = line.garments == 1 ? tr("1 garment, %1").arg(state)
                                            : tr("%1 garments, %2").arg(line.garments).arg(state);
        if (line.owed().minor > 0 && line.state != OrderState::Cancelled)
            second = tr("%1, %2 owed").arg(second, money(line.owed(), currency));
        Matter matter;
        matter.order = line.id;
        return {.kind = FinderKind::Order,
                .title = QStringLiteral("%1  %2").arg(line.number).arg(words(line.customer)),
                .second = second,
                .iconName = QStringLiteral("order-book"),
                .shade = {},
                .keys = {},
                .target = GoTo{PlaceName::OrderBook, matter}};
    }

    static FinderEntry roll(const FilmRoll& roll, const Film& film, const RollCondition* condition,
                            LocalDate today) {
        QString second = tr("%1 left").arg(metres(roll.left));
        if (roll.state == RollState::PutAway)
            second = tr("%1, put away").arg(second);
        else if (roll.state == RollState::UsedUp)
            second = tr("used up");
        else if (condition != nullptr && condition->stripFailed)
            second = tr("%1, failed its test strip").arg(second);
        else if (condition != nullptr && condition->isPastAge(today))
            second = tr("%1, past its use-by").arg(second);
        else if (condition != nullptr && condition->useBy)
            second = tr("%1, use by %2").arg(second, date(*condition->useBy));
        Matter matter;
        matter.roll = roll.id;
        matter.film = film.id;
        return {.kind = FinderKind::Roll,
                .title = QStringLiteral("%1  %2").arg(words(roll.label()), words(film.name())),
                .second = second,
                .iconName = {},
                .shade = app::colourOf(film.rgb),
                .keys = {},
                .target = GoTo{PlaceName::FilmShelf, matter}};
    }

    static FinderEntry mat(const FilmToCut& toCut, const Film& film) {
        const std::size_t waiting = toCut.waiting.size();
        Matter matter;
        matter.film = film.id;
        return {.kind = FinderKind::Action,
                .title = tr("Cut %1").arg(words(film.name())),
                .second = waiting == 0   ? tr("nothing may be cut yet")
                          : waiting == 1 ? tr("1 decal waits")
                                         : tr("%1 decals wait").arg(waiting),
                .iconName = {},
                .shade = app::colourOf(film.rgb),
                .keys = {},
                .target = GoTo{PlaceName::CuttingMat, matter}};
    }

    static FinderEntry lot(const BlankLot& lot, const BlankStyle& style) {
        const Colour* colour = style.colour(lot.colour);
        const QString state = (lot.lastLoad ? tr("%1 washed") : tr("%1 unwashed")).arg(lot.unitsLeft);
        Matter matter;
        matter.lot = lot.id;
        matter.style = lot.style;
        matter.colour = lot.colour;
        matter.size = words(lot.size);
        return {.kind = FinderKind::Lot,
                .title = tr("%1, %2, %3")
                             .arg(words(style.name), words(lot.size),
                                  colour != nullptr ? words(colour->name) : QString()),
                .second = tr("%1, lot of %2").arg(state, date(lot.receivedOn)),
                .iconName = {},
                .shade = colour != nullptr ? app::colourOf(colour->rgb) : QColor(),
                .keys = {},
                .target = GoTo{PlaceName::BlankRail, matter}};
    }
};

// Words of letters and digits, small.
QStringList wordsIn(const QString& text) {
    QStringList found;
    QString word;
    for (const QChar letter : text.toCaseFolded()) {
        if (letter.isLetterOrNumber() || letter.isMark()) {
            word.append(letter);
        } else if (!word.isEmpty()) {
            found.append(word);
            word.clear();
        }
    }
    if (!word.isEmpty())
        found.append(word);
    return found;
}

bool beginsOneOf(const QString& typed, const QStringList& among) {
    return std::ranges::any_of(among, [&](const QString& word) { return word.startsWith(typed); });
}

// 0 is best; none: no match.
std::optional<int> rank(const FinderEntry& entry, const QStringList& typed) {
    const QStringList title = wordsIn(entry.title);
    const QStringList all = title + wordsIn(entry.second) + wordsIn(FinderWords::kind(entry.kind));
    bool isTitleOnly = true;
    for (const QString& word : typed) {
        if (!beginsOneOf(word, all))
            return std::nullopt;
        isTitleOnly = isTitleOnly && beginsOneOf(word, title);
    }
    const bool beginsTitle = !title.isEmpty() && !typed.isEmpty() && title.front().startsWith(typed.front());
    if (beginsTitle && isTitleOnly)
        return 0;
    return isTitleOnly ? 1 : 2;
}

bool leadsSomewhere(const FinderEntry& entry) {
    const auto* place = std::get_if<GoTo>(&entry.target);
    return place == nullptr || builtPlace(place->place) != nullptr;
}

struct Ranked {
    int rank;
    FinderEntry entry;
};

void addMatching(std::vector<Ranked>& ranked, std::vector<FinderEntry> entries, const QStringList& typed) {
    for (FinderEntry& entry : entries)
        if (const auto found = rank(entry, typed); found && leadsSomewhere(entry))
            ranked.push_back({*found, std::move(entry)});
}

std::vector<FinderEntry> rolls(const ReckonedShop& shop) {
    std::vector<FinderEntry> entries;
    for (const FilmRoll& roll : shop.facts.rolls)
        entries.push_back(FinderWords::roll(roll, shop.facts.films.at(roll.film),
                                            shop.conditions.find(roll.id), shop.now.today()));
    return entries;
}

// Films that have something to cut, to turn to their mats.
std::vector<FinderEntry> mats(const ReckonedShop& shop) {
    std::vector<FinderEntry> entries;
    for (const FilmToCut& film : filmsToCut(shop))
        entries.push_back(FinderWords::mat(film, shop.facts.films.at(film.film)));
    return entries;
}

std::vector<FinderEntry> lots(const ReckonedShop& shop) {
    std::vector<FinderEntry> entries;
    for (const BlankLot& lot : shop.facts.lots)
        entries.push_back(FinderWords::lot(lot, shop.facts.styles.at(lot.style)));
    return entries;
}

// The order book's own search decides which; one whose number is just what was typed comes before all else.
void addOrders(std::vector<Ranked>& ranked, ShopDesk& desk, const QString& typed) {
    if (builtPlace(PlaceName::OrderBook) == nullptr)
        return;
    const auto lines = desk.file().read([&](db::Connection& connection) {
        return db::findOrders(connection, plain(typed), db::OrderFilter::All, kMostOrders);
    });
    if (!lines.ok())
        return;
    for (const db::OrderLine& line : *lines) {
        FinderEntry entry = FinderWords::order(line, desk.currency(), desk.now().today());
        const bool isNumber = QString::number(line.number) == typed.trimmed();
        ranked.push_back({isNumber ? -1 : rank(entry, wordsIn(typed)).value_or(2), std::move(entry)});
    }
}

} // namespace

QString finderKindWords(FinderKind kind) {
    return FinderWords::kind(kind);
}

std::vector<FinderEntry> findEntries(ShopDesk& desk, const QString& typed, std::size_t limit) {
    const QStringList typedWords = wordsIn(typed);
    std::vector<Ranked> ranked;
    addMatching(ranked, FinderWords::places(), typedWords);
    addMatching(ranked, FinderWords::actions(desk), typedWords);
    if (!typedWords.isEmpty()) {
        addOrders(ranked, desk, typed);
        if (!desk.awaitsClimate()) {
            addMatching(ranked, mats(*desk.shop()), typedWords);
            addMatching(ranked, rolls(*desk.shop()), typedWords);
        }
        addMatching(ranked, lots(*desk.shop()), typedWords);
        if (typedWords.size() > 1)
            addMatching(ranked, paperEntries(*desk.shop(), typedWords), typedWords);
        addMatching(ranked, FinderWords::fairs(desk), typedWords);
        std::ranges::stable_sort(ranked, {}, &Ranked::rank);
    }
    std::vector<FinderEntry> found;
    for (Ranked& each : ranked)
        if (found.size() < limit)
            found.push_back(std::move(each.entry));
    return found;
}

} // namespace holdfast::app
