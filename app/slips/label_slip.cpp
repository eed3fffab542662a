// SPDX-License-Identifier: GPL-3.0-or-later
// The sewn-in label of a blank style, as a person reads it.
#include "app/desk/formats.h"
#include "app/slips/care_parts.h"
#include "app/slips/fibre_rows.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class LabelSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(LabelSlip)

public:
    LabelSlip(ShopDesk& shopDesk, const BlankStyle& style, QWidget* parent)
        : FormSlip(shopDesk, tr("Read the label"), aboutOf(style), parent)
        , m_style(style.id) {
        const FabricLabel label = style.label.value_or(FabricLabel{});
        m_fibres = new FibreRows(label.fibres);
        QObject::connect(m_fibres, &FibreRows::changed, this, [this] { form().setError("fibres", {}); });
        form().own("fibres", tr("Fibres, as the label gives them"), m_fibres,
                   [rows = m_fibres] { return rows->isFilled(); });
        form().segments("stretch", tr("How stretchy is the cloth?"), {tr("Not"), tr("A little"), tr("Very")},
                        static_cast<int>(label.stretch));
        form().segments("coating", tr("Coating"), {tr("None"), tr("Water-repellent"), tr("Waxed")},
                        static_cast<int>(label.coating));
        form().number("highestSafe", tr("Highest safe platen temperature"), tr("°C"),
                      label.highestSafe ? valueWords(Decimal{label.highestSafe->value}) : QString());
        form().optional("highestSafe");
        form().section(tr("Care"));
        addCareParts(form(), label.care);
        setAction(tr("Save the label"));
        setLong();
        beginAt("fibres"); // also where the label was read before: what is written there comes first
    }

protected:
    void act() override {
        FabricLabel label;
        label.fibres = m_fibres->fibres();
        if (const auto sound = checkFibres(label.fibres); !sound.ok())
            say(sound.error());
        label.stretch = static_cast<Stretch>(form().chosen("stretch"));
        label.coating = static_cast<Coating>(form().chosen("coating"));
        if (const auto safe = form().optionalDecimal("highestSafe", 60, 260))
            label.highestSafe = Celsius{*safe};
        if (!form().isSound())
            return;
        label.care = readCare(form());
        label.readOn = desk().now().today();
        if (form().isSound())
            settle(db::readLabel(desk().file(), m_style, label));
    }

private:
    static QString aboutOf(const BlankStyle& style) {
        const QString name = words(style.name);
        if (!style.label)
            return tr("%1. Its fibres are unknown until the label is read.").arg(name);
        return tr("%1, read %2. What you say now replaces it.").arg(name, date(style.label->readOn));
    }

    BlankStyleId m_style;
    FibreRows* m_fibres = nullptr;
};

} // namespace

Slip* makeReadLabel(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto style = styleIn(desk, matter);
    return style ? new LabelSlip(desk, *style, parent) : nullptr;
}

} // namespace holdfast::app
