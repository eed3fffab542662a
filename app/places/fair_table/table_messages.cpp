// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_messages.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/change_messages.h"
#include "app/places/fair_table/finding_message.h"
#include "app/places/fair_table/opened_order.h"
#include "app/places/fair_table/order_messages.h"
#include "app/places/fair_table/said_of_others.h"
#include "app/places/fair_table/table_cloth.h"
#include "app/theme/wording_outline.h"
#include "core/holds/rules.h"
#include "core/orders/lettering_strokes.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr double kNearThinnest = 0.5; // mm

class TableWords {
    Q_DECLARE_TR_FUNCTIONS(TableWords)
};

// "cotton", "80 % cotton, 20 % polyester"
QString clothWords(const std::vector<FibreShare>& fibres) {
    return words(fibres.size() == 1 ? fibreName(fibres.front().fibre) : fibreText(fibres));
}

// One garment of the draft while all that there is to say of it is gathered.
class Speaker {
public:
    Speaker(const TableDraft& draft, std::size_t at, const TableSums& sums, const ReckonedShop& shop,
            const BlankRailStock& stock)
        : m_draft(draft)
        , m_table(draft.garments[at])
        , m_at(at)
        , m_sums(sums)
        , m_shop(shop)
        , m_stock(stock)
        , m_style(shop.facts.styles.find(m_table.style)) {}

    std::vector<TableMessage> gather() {
        // Nothing is asked anew of what was taken; what stands in its way is said where it is worked on.
        if (isAsTaken(m_draft, m_table) && m_table.copies == 1)
            return {};
        if (m_style && m_table.decals.empty())
            sayLabel();
        sayFilms();
        sayRules();
        sayLetters();
        sayCloth();
        sayRolls();
        sayStock();
        sayStrokes();
        sayOnce();
        return std::move(m_messages);
    }

private:
    void say(Tone tone, const QString& lead, const QString& text, const QString& iconName = {}) {
        TableMessage& message = m_messages.emplace_back();
        message.tone = tone;
        message.lead = lead;
        message.text = text;
        message.iconName = iconName;
    }

    // A label that is not read is said by every film.
    void sayOnce() {
        std::vector<TableMessage> once;
        for (TableMessage& message : m_messages) {
            const bool isSaid = std::ranges::any_of(once, [&](const TableMessage& other) {
                return other.lead == message.lead && other.text == message.text;
            });
            if (!isSaid)
                once.push_back(std::move(message));
        }
        m_messages = std::move(once);
    }

    void sayLabel() {
        if (const auto unread = unreadLabel(*m_style))
            m_messages.push_back(messageFrom(*unread));
    }

    void sayFilms() {
        std::vector<FilmId> said;
        for (const TableDecal& decal : m_table.decals) {
            const Film* film = m_shop.facts.films.find(decal.decal.film);
            if (!film) {
                if (said.empty()) {
                    say(Tone::Held, TableWords::tr("No film."),
                        TableWords::tr("%1 needs a film to be cut from.")
                            .arg(decalWords(decal.decal.content)));
                    m_messages.back().leavesDayOpen = TableWords::tr("No film: choose a film first.");
                }
                said.push_back({});
                continue;
            }
            if (std::ranges::find(said, film->id) != said.end())
                continue;
            said.push_back(film->id);
            sayFilm(*film);
        }
    }

    void sayFilm(const Film& film) {
        const auto unfit = m_style ? fitness(film, *m_style) : std::vector<Finding>{};
        for (const Finding& finding : unfit)
            m_messages.push_back(messageFrom(finding));
        if (!m_style || !unfit.empty() || !film.recipe)
            return;
        const QString recipe =
            TableWords::tr("%1 for %2").arg(celsius(film.recipe->temperature), timeSpan(film.recipe->dwell));
        const QString cloth = m_style->label ? clothWords(m_style->label->fibres) : QString();
        const QString fits = TableWords::tr("%1 on %2, fits.").arg(words(film.finish), cloth);
        if (film.recipe->isConfirmed()) {
            say(Tone::Ready, fits, recipe);
            return;
        }
        say(Tone::Caution, fits, TableWords::tr("%1, a recipe not confirmed yet.").arg(recipe));
        m_messages.back().act = FreeingAct::ConfirmRecipe;
        m_messages.back().matter.film = film.id;
    }

    // What the rules will say of the garment once it is ordered: films over each other, what stands in the
    // way of the platen, wear for children.
    void sayRules() {
        if (!m_style)
            return;
        GarmentDraft draft = garmentDraft(m_table);
        std::erase_if(draft.decals,
                      [&](const DecalDraft& decal) { return !m_shop.facts.films.find(decal.film); });
        const Garment garment = asGarment(draft);
        const Order order;
        const Surroundings around = m_shop.around();
        const Press* press = pressFor(m_shop.facts, garment);
        const Subject subject{around, garment, order, *m_style, nullptr, press};
        Findings findings;
        layersNotAllowed(subject, findings);
        filmsDisagree(subject, findings);
        letteringTooSmall(subject, findings);
        obstacles(subject, findings);
        noPress(subject, findings);
        pressOff(subject, findings);
        pressUneven(subject, findings);
        localLaw(subject, findings);
        for (const Finding& finding : findings)
            if (finding.grade != Grade::StepAdded)
                m_messages.push_back(messageFrom(finding));
    }

    void sayLetters() {
        for (const TableDecal& table : m_table.decals) {
            const auto* wording = std::get_if<Wording>(&table.decal.content);
            const QString without =
                wording ? lettersWithoutShape(words(wording->text), wording->face) : QString();
            if (without.isEmpty())
                continue;
            say(Tone::Held, TableWords::tr("No letter shape for %1.").arg(without),
                TableWords::tr("No font on this computer has it: it cannot be cut. Write it another way."));
            m_messages.back().leavesDayOpen = TableWords::tr("No letter shape for %1.").arg(without);
        }
    }

    // Where a decal does not lie on the cloth, and the nearest place at which it does.
    void sayCloth() {
        if (!m_style || m_at != m_draft.garmentAt)
            return;
        for (std::size_t at = 0; at < m_table.decals.size(); ++at) {
            const Sentence off = offClothOf(m_table, *m_style, at);
            if (off.empty())
                continue;
            const DecalDraft& decal = m_table.decals[at].decal;
            say(Tone::Caution, TableWords::tr("%1 is off the cloth.").arg(decalWords(decal.content)),
                words(off));
            TableMessage& message = m_messages.back();
            message.spot = spotOnCloth(m_table, *m_style, at);
            message.garment = m_at;
            message.decal = at;
            const DecalSpot lies{decal.placement, decal.below, decal.aside, decal.width, decal.height};
            message.text +=
                QStringLiteral(" ") +
                (message.spot ? TableWords::tr("Nearest spot: %1.").arg(words(wayToSpot(lies, *message.spot)))
                              : TableWords::tr("There is no spot for it on this garment."));
        }
    }

    void sayRolls() {
        std::vector<std::pair<FilmId, RollLack>> said;
        for (std::size_t decal = 0; decal < m_table.decals.size(); ++decal) {
            const DecalDraft& drafted = m_table.decals[decal].decal;
            const Film* film = m_shop.facts.films.find(drafted.film);
            if (!film)
                continue;
            const RollPick& pick = m_sums.rolls[m_at][decal];
            // What is said of the whole film is said once; a width is each decal's own.
            const auto key = std::pair(film->id, pick.lack);
            if (pick.lack != RollLack::TooNarrow && std::ranges::find(said, key) != said.end())
                continue;
            said.push_back(key);
            sayRoll(*film, drafted, pick);
        }
    }

    void sayRoll(const Film& film, const DecalDraft& decal, const RollPick& pick) {
        const QString name = words(film.name());
        const Days leadTime = m_shop.facts.settings.filmLeadTime;
        switch (pick.lack) {
        case RollLack::NoRoll:
            say(Tone::Held, TableWords::tr("No roll of %1 on the shelf.").arg(name),
                TableWords::tr("The promise counts %1 to buy one.").arg(dayCount(leadTime)));
            break;
        case RollLack::TooNarrow:
            say(Tone::Held,
                TableWords::tr("%1, %2 wide, fits no roll.")
                    .arg(decalWords(decal.content), millimetres(decal.width)),
                TableWords::tr("The widest roll of %1 is %2. Make it smaller or choose another film.")
                    .arg(name, millimetres(pick.widest)));
            break;
        case RollLack::TooShort:
            say(Tone::Held, TableWords::tr("Roll of %1 too short.").arg(name),
                TableWords::tr("%1 takes %2; %3 is left.")
                    .arg(decalWords(decal.content), metres(pick.needed), metres(pick.left)));
            break;
        case RollLack::None:
            if (pick.roll && !pick.mayBeUsed) {
                const RollCondition* condition = m_shop.conditions.find(pick.roll->id);
                const bool isOld = condition && condition->isPastAge(m_shop.now.today());
                say(Tone::Held, TableWords::tr("%1 cannot be cut from yet.").arg(words(pick.roll->label())),
                    condition && condition->stripFailed
                        ? TableWords::tr("Its test strip failed: use another roll, or press another strip.")
                    : isOld
                        ? TableWords::tr("It is past its %1: press a test strip first.")
                              .arg(words(condition->useByName()))
                        : TableWords::tr("It was stored too damp, dry or hot: press a test strip first."));
                m_messages.back().dayWaitsFor = deliveryWords();
                m_messages.back().act = FreeingAct::TestStrip;
                m_messages.back().matter.roll = pick.roll->id;
            }
            return;
        }
        if (pick.lack == RollLack::TooNarrow) {
            m_messages.back().leavesDayOpen =
                TableWords::tr("%1 fits no roll: make it smaller or choose another film first.")
                    .arg(decalWords(decal.content));
            return;
        }
        m_messages.back().dayWaitsFor = deliveryWords();
        m_messages.back().act = FreeingAct::ReceiveRoll;
        m_messages.back().matter.film = film.id;
    }

    bool isSameKind(const TableGarment& other) const {
        return other.style == m_table.style && other.size == m_table.size && other.colour == m_table.colour;
    }

    // Said once of all garments of a kind, with the first of them that wants a blank.
    void sayStock() {
        if (!m_style || !m_table.isBlankChosen())
            return;
        std::int64_t asked = 0;
        for (std::size_t at = 0; at < m_draft.garments.size(); ++at) {
            const std::int64_t wanted =
                isSameKind(m_draft.garments[at]) ? blanksWanted(m_draft, m_draft.garments[at]) : 0;
            if (wanted > 0 && at < m_at)
                return;
            asked += wanted;
        }
        const BlankStock stock = m_stock.of({m_style->id, m_table.size, m_table.colour});
        if (asked <= stock.total())
            return;
        const QString kind = garmentWords(m_table, m_shop.facts);
        const QString wait = TableWords::tr("Buy %1: the promise counts %2 until they come.")
                                 .arg(asked - stock.total())
                                 .arg(dayCount(m_shop.facts.settings.blankLeadTime));
        const QString lead =
            stock.total() == 0
                ? TableWords::tr("No %1 on the rail.").arg(kind)
                : TableWords::tr("Only %1 of %2 %3 on the rail.").arg(stock.total()).arg(asked).arg(kind);
        say(Tone::Held, lead, wait);
        m_messages.back().dayWaitsFor = deliveryWords();
        m_messages.back().namesItsKind = true;
        m_messages.back().act = FreeingAct::ReceiveBlanks;
        m_messages.back().matter.style = m_style->id;
        m_messages.back().matter.size = words(m_table.size);
        m_messages.back().matter.colour = m_table.colour;
    }

    // Too thin is said by the rules; here what is only just wide enough.
    void sayStrokes() {
        for (const TableDecal& table : m_table.decals) {
            const auto* wording = std::get_if<Wording>(&table.decal.content);
            if (!wording)
                continue;
            const double stroke = strokeEstimate(*wording, table.decal.height);
            if (stroke < kThinnestStroke || stroke >= kThinnestStroke + kNearThinnest)
                continue;
            say(Tone::Caution,
                TableWords::tr("Strokes of %1 are about %2 mm.")
                    .arg(decalWords(table.decal.content), valueWords(Decimal{stroke, 1})),
                TableWords::tr("An estimate. Under %1 mm film tears when it is weeded.")
                    .arg(valueWords(Decimal{kThinnestStroke})));
        }
    }

    const TableDraft& m_draft;
    const TableGarment& m_table;
    const std::size_t m_at;
    const TableSums& m_sums;
    const ReckonedShop& m_shop;
    const BlankRailStock& m_stock;
    const BlankStyle* m_style;
    std::vector<TableMessage> m_messages;
};

int rank(Tone tone) {
    switch (tone) {
    case Tone::Held:
        return 0;
    case Tone::Caution:
        return 1;
    case Tone::Working:
    case Tone::Plain:
        return 2;
    case Tone::Ready:
        return 3;
    }
    return 4;
}

} // namespace

std::vector<TableMessage> messagesFor(const TableDraft& draft, const TableSums& sums,
                                      const ReckonedShop& shop, const BlankRailStock& stock) {
    std::vector<TableMessage> messages;
    SaidOfOthers others;
    for (std::size_t at = 0; at < draft.garments.size(); ++at) {
        auto said = Speaker{draft, at, sums, shop, stock}.gather();
        if (at == draft.garmentAt)
            messages = std::move(said);
        else
            others.add(at, std::move(said));
    }
    others.sayInto(messages);
    if (draft.opened)
        sayChange(draft, sums, shop, messages);
    else
        sayDeposit(sums, shop.facts.settings, messages);
    sayMany(draft, shop.facts, messages);
    if (!sums.promiseLack.empty()) {
        TableMessage& message = messages.emplace_back();
        message.tone = Tone::Held;
        message.lead = TableWords::tr("No day can be promised.");
        message.text = words(sums.promiseLack);
    }
    std::ranges::stable_sort(messages, {}, [](const TableMessage& message) { return rank(message.tone); });
    return messages;
}

QString firstSaid(const std::vector<TableMessage>& messages, QString TableMessage::* kind) {
    for (const TableMessage& message : messages)
        if (!(message.*kind).isEmpty())
            return message.*kind;
    return {};
}

} // namespace holdfast::app
