// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/fair_table_model.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/draft_note.h"
#include "app/theme/wording_outline.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kKeptWithin = 250;        // ms after a change
constexpr std::size_t kMostSteps = 300; // that can be undone

Section sectionOf(const std::string& field) {
    if (field == "style")
        return Section::Style;
    if (field == "size")
        return Section::Size;
    if (field == "colour")
        return Section::Colour;
    if (field == "decals" || field == "artwork")
        return Section::Decal;
    if (field == "film")
        return Section::Film;
    if (field == "wording")
        return Section::Words;
    if (field == "width" || field == "height" || field == "below" || field == "aside" || field == "layer")
        return Section::Width;
    if (field == "customerName")
        return Section::Name;
    if (field == "customerPhone")
        return Section::Phone;
    if (field == "deposit")
        return Section::Deposit;
    return Section::None;
}

// The letters of its wordings that this machine has no shape for.
QString lettersMissing(const TableGarment& garment) {
    for (const TableDecal& table : garment.decals)
        if (const auto* wording = std::get_if<Wording>(&table.decal.content))
            if (const QString letters = lettersWithoutShape(words(wording->text), wording->face);
                !letters.isEmpty())
                return letters;
    return {};
}

} // namespace

FairTableModel::FairTableModel(ShopDesk& desk, QObject* parent)
    : QObject(parent)
    , m_desk(desk)
    , m_shop(desk.shop()) {
    m_keepSoon.setSingleShot(true);
    m_keepSoon.setInterval(kKeptWithin);
    connect(&m_keepSoon, &QTimer::timeout, this, &FairTableModel::keepNow);
    connect(&desk, &ShopDesk::changed, this, &FairTableModel::shopChanged);
    connect(&desk, &ShopDesk::minutePassed, this, &FairTableModel::shopChanged);
    restore();
    reckon();
}

FairTableModel::~FairTableModel() {
    if (m_keepSoon.isActive())
        keepNow();
}

const BlankStyle* FairTableModel::style() const {
    return m_shop->facts.styles.find(m_draft.garment().style);
}

BlankStock FairTableModel::stockLeft(const std::string& size, ColourId colour) {
    const BlankStyleId style = m_draft.garment().style;
    const BlankRailStock& rail = m_reckoner.stock(m_shop);
    const BlankStock all = !colour.isSet() ? rail.ofSize(style, size)
                           : size.empty()  ? rail.ofColour(style, colour)
                                           : rail.of({style, size, colour});
    std::int64_t others = 0;
    for (std::size_t at = 0; at < m_draft.garments.size(); ++at) {
        const TableGarment& other = m_draft.garments[at];
        if (at != m_draft.garmentAt && other.style == style && other.isBlankChosen() &&
            (size.empty() || other.size == size) && (!colour.isSet() || other.colour == colour))
            others += blanksWanted(m_draft, other);
    }
    return all.without(others);
}

void FairTableModel::edit(Step step, const std::function<void(TableDraft&)>& change) {
    TableDraft next = m_draft;
    change(next);
    if (next == m_draft)
        return;
    if (const Sentence stays = whatStays(m_shop->facts, m_draft, next); !stays.empty()) {
        m_desk.say(words(stays));
        emit changed(); // a field may show what was not taken
        return;
    }
    const bool goesOn = step != Step::Choice && m_lastStep == step;
    if (!goesOn) {
        m_past.push_back(m_draft);
        if (m_past.size() > kMostSteps)
            m_past.erase(m_past.begin());
    }
    m_lastStep = step;
    m_undone.clear();
    m_keptWords.clear();
    m_isRestored = false;
    set(std::move(next));
}

void FairTableModel::editWithFilm(Step step, const std::function<void(TableDraft&)>& change) {
    edit(step, [&](TableDraft& draft) {
        if (!m_shop->facts.films.find(draft.nextFilm))
            draft.nextFilm = usualFilm();
        change(draft);
    });
}

void FairTableModel::addTeam(const std::vector<TeamLine>& lines) {
    const auto at = patternAt(m_draft);
    const BlankStyle* pattern = at ? m_shop->facts.styles.find(m_draft.garments[*at].style) : nullptr;
    if (!pattern)
        return;
    endStep();
    editWithFilm(Step::Choice, [&](TableDraft& draft) { layTeam(draft, *pattern, lines); });
    endStep();
}

std::vector<TeamLine> FairTableModel::checkedTeam(std::vector<TeamLine> lines) const {
    const auto at = patternAt(m_draft);
    const BlankStyle* pattern = at ? m_shop->facts.styles.find(m_draft.garments[*at].style) : nullptr;
    if (pattern)
        for (TeamLine& line : lines)
            if (line.wrong.empty())
                line.wrong = whyNotOnGarment(m_draft, *pattern, line);
    return lines;
}

std::int64_t FairTableModel::stockOf(BlankStyleId style, const std::string& size, ColourId colour) {
    const BlankRailStock& rail = m_reckoner.stock(m_shop);
    return colour.isSet() ? rail.of({style, size, colour}).total() : rail.ofSize(style, size).total();
}

void FairTableModel::turn(const std::function<void(TableDraft&)>& change) {
    TableDraft next = m_draft;
    change(next);
    if (next == m_draft)
        return;
    endStep();
    set(std::move(next));
}

void FairTableModel::undo() {
    if (m_past.empty())
        return;
    m_undone.push_back(m_draft);
    TableDraft before = std::move(m_past.back());
    m_past.pop_back();
    endStep();
    set(std::move(before));
}

void FairTableModel::redo() {
    if (m_undone.empty())
        return;
    m_past.push_back(m_draft);
    TableDraft after = std::move(m_undone.back());
    m_undone.pop_back();
    endStep();
    set(std::move(after));
}

void FairTableModel::clear() {
    endStep();
    edit(Step::Choice, [](TableDraft& draft) { draft = afterOpened(draft); });
    endStep();
}

void FairTableModel::set(TableDraft draft) {
    // What is at the foot of the window until then is of the order before.
    if (m_draft.isUntouched() && !draft.isUntouched())
        m_desk.say(tr("A new order is started. Ctrl+Z undoes its last step."));
    m_draft = std::move(draft);
    if (!m_draft.isUntouched())
        m_taken.reset();
    if (!m_keepSoon.isActive())
        m_keepSoon.start();
    reckon();
    emit changed();
}

void FairTableModel::reckon() {
    m_sums = m_reckoner.reckon(m_draft, m_shop);
    if (m_desk.awaitsClimate()) {
        // Which rolls may be cut from is not known yet: neither a day nor a refusal is said that may be
        // wrong.
        m_sums.promise.reset();
        m_sums.sooner.reset();
        m_sums.promiseLack = inWindow(tr("The climate readings are still being read."));
        m_messages.clear();
        return;
    }
    m_messages = messagesFor(m_draft, m_sums, *m_shop, m_reckoner.stock(m_shop));
}

void FairTableModel::shopChanged() {
    m_shop = m_desk.shop();
    followOpened();
    // The order just taken was undone: it is on the table again, as it was.
    if (m_taken && !m_taken->isChange && m_draft.isUntouched() && !m_shop->facts.orders.find(m_taken->id) &&
        isGone(m_taken->id)) {
        m_keptWords = tr("Order %1 was undone. Here it is as it was typed.").arg(m_taken->number);
        m_onTableAgain = std::exchange(m_taken, std::nullopt)->id;
        m_draft = m_takenDraft;
        m_keepSoon.start();
    } else if (m_onTableAgain && m_shop->facts.orders.find(*m_onTableAgain)) {
        // Done again: what was laid on the table for it goes, unless it has been changed since.
        if (m_draft == m_takenDraft) {
            m_draft = nextDraft(m_draft);
            m_keptWords.clear();
            m_keepSoon.start();
        }
        m_onTableAgain.reset();
    }
    reckon();
    emit changed();
}

FilmId FairTableModel::usualFilm() const {
    const auto offers = filmOffers(*m_shop, style(), nullptr);
    const FilmOffer* best = nullptr;
    for (const FilmOffer& offer : offers) {
        const auto good = [](const FilmOffer& one) { return one.unfit.empty() && one.pick.mayBeUsed; };
        if (!best || std::tuple(good(offer), offer.left) > std::tuple(good(*best), best->left))
            best = &offer;
    }
    return best ? best->film->id : FilmId{};
}

std::optional<Missing> FairTableModel::missing(bool isQuotation) const {
    for (std::size_t at = 0; at < m_draft.garments.size(); ++at)
        if (auto lack = missingOf(at))
            return lack;
    if (m_draft.customerName.empty() && !m_draft.customer)
        return Missing{Section::Name, m_draft.garmentAt, tr("Who is it for?")};
    if (auto lack = missingMoney(isQuotation))
        return lack;
    if (!m_sums.promise)
        return Missing{Section::None, m_draft.garmentAt,
                       tr("No day can be promised: %1").arg(words(m_sums.promiseLack))};
    const OrderDraft order = orderOf(m_draft, m_sums, isQuotation);
    if (m_draft.opened && !m_shop->facts.orders.find(m_draft.opened->order.id))
        return Missing{Section::None, m_draft.garmentAt,
                       tr("Order %1 is no longer open.").arg(m_draft.opened->order.number)};
    const auto checked = m_draft.opened ? checkChange(m_draft.opened->before, order, m_draft.opened->order.id,
                                                      m_shop->facts, m_shop->now)
                                        : checkDraft(order, m_shop->facts, m_shop->now);
    if (!checked.ok())
        return Missing{sectionOf(checked.error().field), m_draft.garmentAt, words(checked.error().message)};
    return std::nullopt;
}

std::optional<Missing> FairTableModel::missingOf(std::size_t at) const {
    const TableGarment& garment = m_draft.garments[at];
    // A further garment that nothing was chosen for yet is no garment.
    if ((garment == TableGarment{} && m_draft.garments.size() > 1) || isAsTaken(m_draft, garment))
        return std::nullopt;
    if (!garment.style.isSet())
        return Missing{Section::Style, at, tr("Choose a style.")};
    if (garment.size.empty())
        return Missing{Section::Size, at, tr("Choose a size.")};
    if (!garment.colour.isSet())
        return Missing{Section::Colour, at, tr("Choose a colour.")};
    if (garment.decals.empty())
        return Missing{Section::Decal, at, tr("Choose a decal, or type a wording.")};
    OrderDraft alone;
    alone.customerName = "-";
    alone.garments.push_back(garmentDraft(garment));
    alone.promised = m_shop->now.local();
    const auto checked = checkDraft(alone, m_shop->facts, m_shop->now);
    if (!checked.ok())
        return Missing{sectionOf(checked.error().field), at, words(checked.error().message)};
    const QString letters = lettersMissing(garment);
    return letters.isEmpty()
               ? std::nullopt
               : std::optional{Missing{Section::Words, at, tr("No letter shape for %1.").arg(letters)}};
}

std::optional<Missing> FairTableModel::missingMoney(bool isQuotation) const {
    const auto lack = [this](const QString& what) {
        return Missing{Section::Deposit, m_draft.garmentAt, what};
    };
    if (m_sums.depositError)
        return lack(words(m_sums.depositError->message));
    if (m_sums.deposit.minor == 0)
        return std::nullopt;
    if (isQuotation)
        return lack(tr("A quotation takes no money: clear the amount, or take the order."));
    if (!m_draft.paidHow)
        return lack(tr("Cash or card?"));
    return std::nullopt;
}

bool FairTableModel::isGone(OrderId order) {
    const auto known = m_desk.file().read([&](db::Connection& connection) {
        return db::loadFactsOf(connection, std::span(&order, 1)).orders.find(order) != nullptr;
    });
    return known.ok() && !*known;
}

void FairTableModel::restore() {
    m_draft = nextDraft({});
    const auto note = m_desk.file().note(kDraftNote);
    if (!note)
        return;
    auto read = draftFromNote(QByteArray::fromStdString(*note), m_shop->facts);
    if (!read.ok()) {
        m_keptWords = words(read.error().message);
        m_desk.file().dropNote(kDraftNote);
        return;
    }
    const bool isTouched = !read->isUntouched();
    m_draft = isTouched ? std::move(*read) : nextDraft(*read);
    if (!isTouched)
        return;
    m_isRestored = true;
    m_keptWords = tr("A half-typed order was saved.");
    m_kept = QByteArray::fromStdString(*note);
}

void FairTableModel::keepNow() {
    m_keepSoon.stop();
    const QByteArray note = noteOf(m_draft);
    if (note == m_kept)
        return;
    if (m_desk.file().keepNote(kDraftNote, note.toStdString()))
        m_kept = note;
    else
        m_desk.say(tr("The half-typed order could not be saved on this disk."));
}

} // namespace holdfast::app
