// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/lot_pick.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/slips/option_list.h"
#include "app/slips/slip_words.h"
#include "core/shop/lot_state.h"

#include <QCoreApplication>

#include <algorithm>
#include <tuple>

namespace holdfast::app {

namespace {

class LotWords {
    Q_DECLARE_TR_FUNCTIONS(LotPick)

public:
    static Option option(const ReckonedShop& shop, const BlankLot& lot) {
        const LotState state = stateOf(shop.facts, lot);
        Option option;
        option.text = tr("%1 %2").arg(lot.unitsLeft).arg(stateWords(shop.facts, lot, state));
        option.second = tr("received %1").arg(day(lot.receivedOn));
        if (const WashLoad* load = shop.facts.lastLoadOf(lot)) {
            const LocalTime started = shop.now.toLocal(load->startedAt);
            option.second =
                tr("%1, washed %2 %3")
                    .arg(option.second, dayNear(dateOf(started), shop.now.today()), clock(started));
        }
        if (const auto reserved = lot.unitsLeft - shop.facts.freeUnits(lot); reserved > 0)
            option.second = tr("%1, %n reserved for orders", nullptr, howMany(reserved)).arg(option.second);
        option.iconName = signOf(state);
        option.tone = state == LotState::HasSoftener ? Tone::Held : Tone::Plain;
        return option;
    }

private:
    static QString stateWords(const ShopFacts& facts, const BlankLot& lot, LotState state) {
        switch (state) {
        case LotState::Ready:
            return facts.styles.at(lot.style).washedFirst() ? tr("washed") : tr("ready to press");
        case LotState::Drying:
            return tr("drying");
        case LotState::Unwashed:
            return tr("unwashed");
        case LotState::HasSoftener:
            return tr("washed with softener");
        }
        return {};
    }

    static QString signOf(LotState state) {
        switch (state) {
        case LotState::Ready:
            return QStringLiteral("washed");
        case LotState::Drying:
            return QStringLiteral("wash");
        case LotState::Unwashed:
            return QStringLiteral("unwashed");
        case LotState::HasSoftener:
            return QStringLiteral("hold");
        }
        return {};
    }
};

} // namespace

LotPick::LotPick(Form& form, ShopDesk& desk, std::vector<BlankLot> lots, const QString& question)
    : QObject(&form)
    , m_form(form)
    , m_lots(std::move(lots)) {
    if (m_lots.size() < 2)
        return;
    QVector<Option> options;
    for (const BlankLot& lot : m_lots)
        options.append(LotWords::option(*desk.shop(), lot));
    m_list = new OptionList(question);
    m_list->setOptions(options);
    m_list->showAll();
    form.own("lot", question, m_list, [list = m_list] { return list->chosenAt() >= 0; });
    connect(m_list, &OptionList::chosen, this, [this] {
        m_form.setError("lot", {});
        emit changed();
    });
}

const BlankLot* LotPick::lot() const {
    const int at = m_list ? m_list->chosenAt() : 0;
    return at < 0 ? nullptr : &m_lots[static_cast<std::size_t>(at)];
}

void LotPick::check() {
    if (!lot())
        m_form.setError("lot", tr("Choose which blanks."));
}

std::vector<BlankLot> lotsIn(ShopDesk& desk, const SlipTarget& matter) {
    if (matter.lot) {
        const auto lot = lotIn(desk, matter);
        return lot ? std::vector{*lot} : std::vector<BlankLot>{};
    }
    const ShopFacts& facts = desk.shop()->facts;
    std::vector<BlankLot> lots;
    for (const BlankLot& lot : facts.lots)
        if (matter.style == lot.style && plain(matter.size) == lot.size && matter.colour == lot.colour &&
            lot.unitsLeft > 0)
            lots.push_back(lot);
    std::ranges::sort(lots, {}, [&](const BlankLot& lot) {
        return std::tuple{stateOf(facts, lot), lot.receivedOn, lot.id};
    });
    return lots;
}

QString lotsWords(const ShopFacts& facts, const std::vector<BlankLot>& lots) {
    const BlankLot& first = lots.front();
    if (lots.size() == 1)
        return lotWords(facts, first);
    const BlankStyle& style = facts.styles.at(first.style);
    const Colour* colour = style.colour(first.colour);
    return QStringLiteral("%1, %2, %3")
        .arg(words(style.name), words(first.size), colour ? words(colour->name) : QString());
}

} // namespace holdfast::app
