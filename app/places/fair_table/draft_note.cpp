// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/draft_note.h"

#include "app/places/fair_table/opened_order.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <array>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kVersion = 4;
constexpr int kPricedByRule = 3;           // a version before, which took no price by hand
constexpr int kNewOrdersOnly = 2;          // one before that, which opened no order again
constexpr int kPresetDeposit = 1;          // one before that, whose deposit nobody may have asked for
constexpr std::int64_t kFarthest = 10'000; // mm; beyond any measure that can be typed

template <class Choice, std::size_t Count>
using Codes = std::array<std::pair<Choice, const char*>, Count>;

constexpr Codes<Placement, 5> kPlacements{{{Placement::Chest, "chest"},
                                           {Placement::LeftChest, "left-chest"},
                                           {Placement::Front, "front"},
                                           {Placement::Back, "back"},
                                           {Placement::Sleeve, "sleeve"}}};
constexpr Codes<Face, 2> kFaces{{{Face::BookSerif, "serif"}, {Face::Plain, "plain"}}};
constexpr Codes<BillLineKind, 4> kBillLines{{{BillLineKind::Extra, "extra"},
                                             {BillLineKind::Discount, "discount"},
                                             {BillLineKind::ForMany, "for-many"},
                                             {BillLineKind::Rush, "rush"}}};
constexpr std::int64_t kFarthestDay = 100'000; // from 1970
constexpr std::int64_t kMostMinor = 1'000'000'000'000;
constexpr Codes<PaidHow, 3> kPaid{
    {{PaidHow::Cash, "cash"}, {PaidHow::Card, "card"}, {PaidHow::Transfer, "transfer"}}};

template <class Choice, std::size_t Count>
QString codeOf(const Codes<Choice, Count>& codes, Choice choice) {
    for (const auto& [known, code] : codes)
        if (known == choice)
            return QString::fromLatin1(code);
    return {};
}

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

// 63-bit ids do not fit a JSON number.
template <class Kind>
QString text(Id<Kind> id) {
    return QString::number(id.value);
}

QJsonObject written(const TableDecal& table) {
    const DecalDraft& decal = table.decal;
    QJsonObject object{{QStringLiteral("film"), text(decal.film)},
                       {QStringLiteral("placement"), codeOf(kPlacements, decal.placement)},
                       {QStringLiteral("below"), static_cast<qint64>(decal.below.value)},
                       {QStringLiteral("aside"), static_cast<qint64>(decal.aside.value)},
                       {QStringLiteral("width"), static_cast<qint64>(decal.width.value)},
                       {QStringLiteral("height"), static_cast<qint64>(decal.height.value)},
                       {QStringLiteral("sizedByHand"), table.isSizedByHand},
                       {QStringLiteral("movedByHand"), table.isMovedByHand}};
    if (decal.taken)
        object.insert(QStringLiteral("taken"), text(*decal.taken));
    if (const auto* artwork = std::get_if<Artwork>(&decal.content)) {
        object.insert(QStringLiteral("artwork"), text(artwork->name));
    } else {
        const auto& wording = std::get<Wording>(decal.content);
        object.insert(QStringLiteral("words"), text(wording.text));
        object.insert(QStringLiteral("face"), codeOf(kFaces, wording.face));
        if (!wording.outline.empty())
            object.insert(QStringLiteral("outline"), text(wording.outline));
    }
    return object;
}

QJsonObject written(const TableGarment& garment) {
    QJsonArray decals;
    for (const TableDecal& decal : garment.decals)
        decals.append(written(decal));
    QJsonObject object{{QStringLiteral("style"), text(garment.style)},
                       {QStringLiteral("size"), text(garment.size)},
                       {QStringLiteral("colour"), text(garment.colour)},
                       {QStringLiteral("copies"), garment.copies},
                       {QStringLiteral("decals"), decals}};
    if (garment.priceByHand)
        object.insert(QStringLiteral("priceByHand"), static_cast<qint64>(garment.priceByHand->minor));
    if (garment.taken) {
        object.insert(QStringLiteral("taken"), text(*garment.taken));
        object.insert(QStringLiteral("madeAgain"), garment.isMadeAgain);
    }
    return object;
}

QJsonArray written(const std::vector<TableGarment>& garments) {
    QJsonArray all;
    for (const TableGarment& garment : garments)
        all.append(written(garment));
    return all;
}

QJsonArray written(const std::vector<BillLine>& lines) {
    QJsonArray all;
    for (const BillLine& line : lines) {
        QJsonObject object{{QStringLiteral("kind"), codeOf(kBillLines, line.kind)},
                           {QStringLiteral("words"), text(line.words)}};
        if (const auto* share = std::get_if<Percentage>(&line.worth))
            object.insert(QStringLiteral("share"), static_cast<qint64>(share->hundredths));
        else
            object.insert(QStringLiteral("minor"), static_cast<qint64>(std::get<Money>(line.worth).minor));
        if (line.taken)
            object.insert(QStringLiteral("taken"), text(*line.taken));
        all.append(object);
    }
    return all;
}

// Reads one object strictly: whatever is missing or of another kind spoils the whole note.
class Reader {
public:
    Reader(const QJsonObject& object, bool& isSound)
        : m_object(object)
        , m_isSound(isSound) {}

    bool has(const char* key) const { return m_object.contains(QLatin1String(key)); }

    std::string words(const char* key) const { return string(key).toStdString(); }

    std::int64_t whole(const char* key, std::int64_t low, std::int64_t high) const {
        const QJsonValue value = m_object.value(QLatin1String(key));
        const std::int64_t number = value.toInteger(low - 1);
        return number < low || number > high ? spoil(low) : number;
    }

    bool flag(const char* key) const {
        const QJsonValue value = m_object.value(QLatin1String(key));
        return value.isBool() ? value.toBool() : spoil(false);
    }

    template <class IdType>
    IdType id(const char* key) const {
        bool isNumber = false;
        const qlonglong number = string(key).toLongLong(&isNumber);
        return isNumber && number >= 0 ? IdType{number} : spoil(IdType{});
    }

    template <class Choice, std::size_t Count>
    Choice choice(const char* key, const Codes<Choice, Count>& codes) const {
        const QString code = string(key);
        for (const auto& [known, name] : codes)
            if (code == QLatin1String(name))
                return known;
        return spoil(codes.front().first);
    }

    QJsonArray list(const char* key) const {
        const QJsonValue value = m_object.value(QLatin1String(key));
        return value.isArray() ? value.toArray() : spoil(QJsonArray{});
    }

private:
    QString string(const char* key) const {
        const QJsonValue value = m_object.value(QLatin1String(key));
        return value.isString() ? value.toString() : spoil(QString{});
    }

    template <class T>
    T spoil(T instead) const {
        m_isSound = false;
        return instead;
    }

    const QJsonObject m_object;
    bool& m_isSound;
};

TableDecal readDecal(const QJsonObject& object, bool& isSound) {
    const Reader reader{object, isSound};
    TableDecal table;
    DecalDraft& decal = table.decal;
    decal.film = reader.id<FilmId>("film");
    decal.placement = reader.choice("placement", kPlacements);
    decal.below = {reader.whole("below", 0, kFarthest)};
    decal.aside = {reader.whole("aside", -kFarthest, kFarthest)};
    decal.width = {reader.whole("width", 1, kFarthest)};
    decal.height = {reader.whole("height", 1, kFarthest)};
    table.isSizedByHand = reader.flag("sizedByHand");
    table.isMovedByHand = reader.has("movedByHand") && reader.flag("movedByHand");
    if (reader.has("artwork"))
        decal.content = Artwork{reader.words("artwork")};
    else
        decal.content = Wording{reader.words("words"), reader.choice("face", kFaces),
                                reader.has("outline") ? reader.words("outline") : std::string{}};
    if (reader.has("taken"))
        decal.taken = reader.id<DecalId>("taken");
    return table;
}

std::vector<BillLine> readLines(const QJsonArray& written, bool& isSound) {
    std::vector<BillLine> lines;
    for (const auto& each : written) {
        const Reader reader{each.toObject(), isSound};
        BillLine& line = lines.emplace_back();
        line.kind = reader.choice("kind", kBillLines);
        line.words = reader.words("words");
        if (reader.has("share"))
            line.worth =
                Percentage{reader.whole("share", -kWholePercentage.hundredths, kWholePercentage.hundredths)};
        else
            line.worth = Money{reader.whole("minor", -kMostMinor, kMostMinor)};
        if (reader.has("taken"))
            line.taken = reader.id<BillLineId>("taken");
    }
    return lines;
}

TableGarment readGarment(const QJsonObject& object, bool& isSound) {
    const Reader reader{object, isSound};
    TableGarment garment;
    garment.style = reader.id<BlankStyleId>("style");
    garment.size = reader.words("size");
    garment.colour = reader.id<ColourId>("colour");
    garment.copies = static_cast<int>(reader.whole("copies", 1, kMostCopies));
    for (const auto& decal : reader.list("decals"))
        garment.decals.push_back(readDecal(decal.toObject(), isSound));
    isSound = isSound && garment.decals.size() <= kMostDecalsOnGarment;
    if (reader.has("priceByHand"))
        garment.priceByHand = Money{reader.whole("priceByHand", 0, kMostMinor)};
    if (reader.has("taken")) {
        garment.taken = reader.id<GarmentId>("taken");
        garment.isMadeAgain = reader.flag("madeAgain");
    }
    return garment;
}

TableDraft readDraft(const QJsonObject& object, bool& isSound) {
    const Reader reader{object, isSound};
    TableDraft draft;
    draft.garments.clear();
    for (const auto& garment : reader.list("garments"))
        draft.garments.push_back(readGarment(garment.toObject(), isSound));
    if (draft.garments.empty()) {
        isSound = false;
        return TableDraft{};
    }
    draft.garmentAt = static_cast<std::size_t>(reader.whole("garmentAt", 0, std::ssize(draft.garments) - 1));
    if (reader.has("decalAt")) {
        const auto last = std::ssize(draft.garment().decals) - 1;
        if (last < 0)
            isSound = false;
        else
            draft.decalAt = static_cast<std::size_t>(reader.whole("decalAt", 0, last));
    }
    draft.isAdding = reader.flag("isAdding");
    if (reader.has("nextPlacement"))
        draft.nextPlacement = reader.choice("nextPlacement", kPlacements);
    draft.nextFilm = reader.id<FilmId>("nextFilm");
    draft.nextFace = reader.choice("nextFace", kFaces);
    if (reader.has("customer"))
        draft.customer = reader.id<CustomerId>("customer");
    draft.customerName = reader.words("customerName");
    draft.customerPhone = reader.words("customerPhone");
    draft.knownPhone = reader.words("knownPhone");
    if (object.value(QLatin1String("version")).toInt() == kPresetDeposit)
        return draft;
    draft.paidNow = reader.words("paidNow");
    if (reader.has("paidHow"))
        draft.paidHow = reader.choice("paidHow", kPaid);
    if (reader.has("note"))
        draft.note = reader.words("note");
    if (reader.has("lines"))
        draft.lines = readLines(reader.list("lines"), isSound);
    draft.isForManyOff = reader.has("isForManyOff") && reader.flag("isForManyOff");
    draft.isRushOff = reader.has("isRushOff") && reader.flag("isRushOff");
    if (reader.has("wantedOn"))
        draft.wantedOn = LocalDate{Days{reader.whole("wantedOn", 0, kFarthestDay)}};
    return draft;
}

void leaveOutUnknown(TableDraft& draft, const ShopFacts& facts) {
    if (!facts.films.find(draft.nextFilm))
        draft.nextFilm = {};
    for (TableGarment& garment : draft.garments) {
        const BlankStyle* style = facts.styles.find(garment.style);
        if (!style) {
            garment.style = {};
            garment.size.clear();
            garment.colour = {};
        } else {
            if (std::ranges::find(style->sizes, garment.size) == style->sizes.end())
                garment.size.clear();
            if (!style->colour(garment.colour))
                garment.colour = {};
        }
        for (TableDecal& decal : garment.decals)
            if (!facts.films.find(decal.decal.film))
                decal.decal.film = {};
    }
}

} // namespace

namespace {

QJsonObject written(const TableDraft& draft) {
    QJsonObject object{{QStringLiteral("version"), kVersion},
                       {QStringLiteral("garments"), written(draft.garments)},
                       {QStringLiteral("garmentAt"), static_cast<qint64>(draft.garmentAt)},
                       {QStringLiteral("isAdding"), draft.isAdding},
                       {QStringLiteral("nextFilm"), text(draft.nextFilm)},
                       {QStringLiteral("nextFace"), codeOf(kFaces, draft.nextFace)},
                       {QStringLiteral("customerName"), text(draft.customerName)},
                       {QStringLiteral("customerPhone"), text(draft.customerPhone)},
                       {QStringLiteral("knownPhone"), text(draft.knownPhone)},
                       {QStringLiteral("paidNow"), text(draft.paidNow)},
                       {QStringLiteral("note"), text(draft.note)},
                       {QStringLiteral("lines"), written(draft.lines)},
                       {QStringLiteral("isForManyOff"), draft.isForManyOff},
                       {QStringLiteral("isRushOff"), draft.isRushOff}};
    if (draft.wantedOn)
        object.insert(QStringLiteral("wantedOn"),
                      static_cast<qint64>(draft.wantedOn->time_since_epoch().count()));
    if (draft.paidHow)
        object.insert(QStringLiteral("paidHow"), codeOf(kPaid, *draft.paidHow));
    if (draft.decalAt)
        object.insert(QStringLiteral("decalAt"), static_cast<qint64>(*draft.decalAt));
    if (draft.nextPlacement)
        object.insert(QStringLiteral("nextPlacement"), codeOf(kPlacements, *draft.nextPlacement));
    if (draft.customer)
        object.insert(QStringLiteral("customer"), text(*draft.customer));
    if (draft.opened) {
        QJsonObject opened{{QStringLiteral("order"), text(draft.opened->order.id)},
                           {QStringLiteral("customer"), text(draft.opened->order.customer)},
                           {QStringLiteral("note"), text(draft.opened->before.note)},
                           {QStringLiteral("lines"), written(draft.opened->before.lines)},
                           {QStringLiteral("garments"), written(draft.opened->garments)}};
        if (draft.opened->aside)
            opened.insert(QStringLiteral("aside"), written(*draft.opened->aside));
        object.insert(QStringLiteral("opened"), opened);
    }
    return object;
}

// The shop may know the order otherwise by now, or no longer; then what is as it was is left to the shop.
void readOpened(const QJsonObject& object, const ShopFacts& facts, TableDraft& draft, bool& isSound);

TableDraft readWhole(const QJsonObject& object, const ShopFacts& facts, bool& isSound) {
    TableDraft draft = readDraft(object, isSound);
    leaveOutUnknown(draft, facts);
    if (object.contains(QLatin1String("opened")))
        readOpened(object.value(QLatin1String("opened")).toObject(), facts, draft, isSound);
    return draft;
}

void readOpened(const QJsonObject& object, const ShopFacts& facts, TableDraft& draft, bool& isSound) {
    const Reader reader{object, isSound};
    OpenedOrder opened;
    opened.order.id = reader.id<OrderId>("order");
    opened.before.customer = reader.id<CustomerId>("customer");
    opened.before.note = reader.words("note");
    if (reader.has("lines"))
        opened.before.lines = readLines(reader.list("lines"), isSound);
    for (const auto& garment : reader.list("garments"))
        opened.garments.push_back(readGarment(garment.toObject(), isSound));
    if (reader.has("aside"))
        opened.aside = std::make_shared<const TableDraft>(
            readWhole(object.value(QLatin1String("aside")).toObject(), facts, isSound));
    const Order* order = facts.orders.find(opened.order.id);
    if (!isSound)
        return;
    draft.opened = std::make_shared<const OpenedOrder>(std::move(opened));
    draft = order && order->isOpen() ? broughtUpToDate(draft, facts) : afterOpened(draft);
}

} // namespace

QByteArray noteOf(const TableDraft& draft) {
    return QJsonDocument(written(draft)).toJson(QJsonDocument::Compact);
}

Result<TableDraft> draftFromNote(const QByteArray& note, const ShopFacts& facts) {
    const QJsonObject object = QJsonDocument::fromJson(note).object();
    const int version = object.value(QLatin1String("version")).toInt();
    bool isSound = version == kVersion || version == kPricedByRule || version == kNewOrdersOnly ||
                   version == kPresetDeposit;
    TableDraft draft = isSound ? readWhole(object, facts, isSound) : TableDraft{};
    if (!isSound)
        return plainError(said("A half-typed order was saved but cannot be read."));
    return draft;
}

} // namespace holdfast::app
