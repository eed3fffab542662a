// SPDX-License-Identifier: GPL-3.0-or-later
// A wash load found dry.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/option_list.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/button.h"
#include "db/actions/blank_actions.h"
#include "db/tables/ledgers.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

QString dryingWords(Drying drying) {
    switch (drying) {
    case Drying::Line:
        return QCoreApplication::translate("MarkDrySlip", "on the line");
    case Drying::TumbleLow:
        return QCoreApplication::translate("MarkDrySlip", "tumbled low");
    case Drying::Tumble:
        return QCoreApplication::translate("MarkDrySlip", "tumbled");
    }
    return {};
}

class MarkDrySlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(MarkDrySlip)

public:
    MarkDrySlip(ShopDesk& shopDesk, const std::vector<db::LoadUnderWay>& loads, const SlipTarget& matter,
                QWidget* parent)
        : FormSlip(shopDesk, tr("Mark a load as dry"),
                   tr("Feel the thickest seam: film does not grip a blank that is still damp."), parent)
        , m_loads(loads) {
        const auto lot = lotIn(shopDesk, matter);
        int chosen = 0;
        QVector<Option> options;
        for (const db::LoadUnderWay& each : m_loads) {
            if (lot && lot->lastLoad == each.load.id)
                chosen = static_cast<int>(options.size());
            options.append(optionOf(each));
        }
        setAction(tr("Mark the load dry"));
        if (options.isEmpty()) {
            form().note(tr("No wash load is under way. Loads are put together on the Blank rail."));
            action()->setCannot(tr("No wash load is under way."));
            return;
        }
        m_list = new OptionList(tr("Loads under way"));
        m_list->setOptions(options, chosen);
        form().own("load", {}, m_list, [list = m_list] { return list->chosenAt() >= 0; });
    }

protected:
    void act() override {
        if (m_list && m_list->chosenAt() >= 0)
            settle(db::markDry(desk().file(), m_loads[static_cast<std::size_t>(m_list->chosenAt())].load.id));
    }

private:
    Option optionOf(const db::LoadUnderWay& each) {
        const ReckonedShop& shop = *desk().shop();
        const LocalDate today = shop.now.today();
        const LocalTime started = shop.now.toLocal(each.load.startedAt);
        const LocalTime dry = shop.now.toLocal(each.load.startedAt + shop.facts.settings.washTakes +
                                               shop.facts.settings.dryingTakes);
        Option option;
        option.text = tr("%1, started %2 %3")
                          .arg(tr("%n blank|%n blanks", nullptr, howMany(each.units)),
                               dayNear(dateOf(started), today), clock(started));
        option.second =
            tr("%1, %2, %3. By the shop’s times dry %4 %5.")
                .arg(each.load.detergent.empty() ? tr("no detergent noted") : words(each.load.detergent),
                     celsius(each.load.water), dryingWords(each.load.drying), dayNear(dateOf(dry), today),
                     clock(dry));
        const bool isDue = dry <= shop.now.local();
        option.iconName = isDue ? QStringLiteral("washed") : QStringLiteral("clock");
        option.tone = isDue ? Tone::Ready : Tone::Plain;
        if (each.load.leftSoftener()) {
            option.second = tr("%1 With softener: it must be washed again without.").arg(option.second);
            option.iconName = QStringLiteral("hold");
            option.tone = Tone::Held;
        }
        return option;
    }

    std::vector<db::LoadUnderWay> m_loads;
    OptionList* m_list = nullptr;
};

} // namespace

Slip* makeMarkDry(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto loads =
        desk.file().read([](db::Connection& connection) { return db::loadsUnderWay(connection); });
    return desk.done(loads) ? new MarkDrySlip(desk, *loads, matter, parent) : nullptr;
}

} // namespace holdfast::app
