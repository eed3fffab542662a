// SPDX-License-Identifier: GPL-3.0-or-later
// A delivery of blanks onto the rail: all sizes and colours of a style at once.
#include "app/desk/formats.h"
#include "app/slips/delivery_grid.h"
#include "app/slips/form_slip.h"
#include "app/slips/shade_picker.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "core/trade/limits.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class ReceiveBlanksSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ReceiveBlanksSlip)

public:
    ReceiveBlanksSlip(ShopDesk& shopDesk, const SlipTarget& matter, QWidget* parent)
        : FormSlip(shopDesk, tr("Receive blanks"), tr("What came in of a style, by colour and size."),
                   parent) {
        addStyles(matter);
        m_units = new DeliveryGrid(QStringLiteral("units"));
        form().own("units", tr("How many"), m_units, [this] { return !isEmpty(); });
        form().turn("hasNewColour", tr("In a new colour too"));
        form().line("newColour", tr("Name of the new colour"));
        m_shade = new ShadePicker(tr("Shade of the new colour"));
        form().own("newShade", tr("Shade"), m_shade);
        m_newUnits = new DeliveryGrid(QStringLiteral("newUnits"));
        form().own("newUnits", tr("How many in it"), m_newUnits);
        m_waiting = form().note({});
        QObject::connect(m_shade, &ShadePicker::changed, this, [this] { form().setError("newShade", {}); });
        for (DeliveryGrid* grid : {m_units, m_newUnits})
            QObject::connect(grid, &DeliveryGrid::changed, this, [this] {
                form().setError("units", {});
                form().setError("newUnits", {});
                showWaiting();
            });
        QObject::connect(m_style, &QComboBox::currentIndexChanged, this, [this] { showKinds(); });
        QObject::connect(&form(), &Form::edited, this, [this] { showNewColour(); });
        showKinds();
        showNewColour();
        if (style() && matter.colour)
            m_units->beginAt(plain(matter.size), *matter.colour);
        if (style())
            beginAt("units");
        setAction(tr("Receive the blanks"));
        setLong();
    }

protected:
    void act() override {
        form().chosen("style");
        if (const QString wrong = m_units->wrong(); !wrong.isEmpty()) {
            form().setError("units", wrong);
            refuse(wrong); // the foot of a grid may be out of view
        }
        if (isWithNewColour())
            checkNewColour();
        if (form().isSound() && isEmpty())
            form().setError("units", tr("How many: type a number in at least one size."));
        if (!form().isSound())
            return;
        settle(desk().file().asOne([&]() -> Result<Done> {
            std::vector<db::DeliveredBlanks> blanks;
            for (const DeliveryGrid::Cell& cell : m_units->filled())
                blanks.push_back({cell.size, cell.colour, cell.units});
            if (isWithNewColour()) {
                const auto added = db::addColour(desk().file(), style()->id, plain(form().text("newColour")),
                                                 m_shade->shade().value_or(0));
                if (!added.ok())
                    return fieldError("newColour", added.error().message);
                for (const DeliveryGrid::Cell& cell : m_newUnits->filled())
                    blanks.push_back({cell.size, *added, cell.units});
            }
            return db::receiveDelivery(desk().file(), style()->id, blanks, desk().now());
        }));
    }

private:
    // Nothing more is received of what is retired.
    void addStyles(const SlipTarget& matter) {
        const auto wanted = styleIn(desk(), matter);
        QVector<PickItem> items;
        int at = -1;
        for (BlankStyle each : desk().shop()->facts.styles) {
            if (each.isRetired)
                continue;
            std::erase_if(each.colours, [](const Colour& colour) { return colour.isRetired; });
            if (wanted && wanted->id == each.id)
                at = static_cast<int>(m_styles.size());
            items.append({words(each.name)});
            m_styles.push_back(std::move(each));
        }
        if (m_styles.size() == 1)
            at = 0;
        m_style = form().list("style", tr("Style"), items, at);
    }

    const BlankStyle* style() const {
        const int at = m_style->currentIndex();
        return at < 0 ? nullptr : &m_styles[static_cast<std::size_t>(at)];
    }

    bool isWithNewColour() const { return style() != nullptr && form().isOn("hasNewColour"); }
    bool isEmpty() const {
        return m_units->filled().empty() && (!isWithNewColour() || m_newUnits->filled().empty());
    }

    void checkNewColour() {
        const auto name = typedText(plain(form().text("newColour")),
                                    {.field = "newColour", .what = phrase("The colour’s name"), .most = 40});
        if (!name.ok())
            say(name.error());
        if (!m_shade->shade())
            form().setError("newShade", tr("Shade: six digits of red, green and blue, such as 66754c."));
        if (const QString wrong = m_newUnits->wrong(); !wrong.isEmpty())
            form().setError("newUnits", wrong);
        else if (m_newUnits->filled().empty())
            form().setError("newUnits", tr("How many: type a number in at least one size."));
    }

    void showKinds() {
        const BlankStyle* chosen = style();
        m_units->setKinds(chosen ? chosen->sizes : std::vector<std::string>{},
                          chosen ? chosen->colours : std::vector<Colour>{});
        m_newUnits->setKinds(chosen ? chosen->sizes : std::vector<std::string>{},
                             {{ColourId{}, plain(tr("the new colour")), 0xFFFFFF}});
        form().setShown("units", chosen && !chosen->colours.empty());
        form().setShown("hasNewColour", chosen != nullptr);
        showNewColour();
        showWaiting();
    }

    void showNewColour() {
        for (const char* part : {"newColour", "newShade", "newUnits"})
            form().setShown(part, isWithNewColour());
    }

    // Garments that get theirs out of this delivery.
    void showWaiting() {
        const BlankStyle* chosen = style();
        const ShopFacts& facts = desk().shop()->facts;
        const auto came = m_units->filled();
        const auto waiting = std::ranges::count_if(facts.garments, [&](const Garment& garment) {
            return chosen && garment.style == chosen->id && !garment.lot &&
                   facts.orderOf(garment).state == OrderState::Confirmed &&
                   std::ranges::any_of(came, [&](const DeliveryGrid::Cell& cell) {
                       return cell.size == garment.size && cell.colour == garment.colour;
                   });
        });
        m_waiting->setVisible(waiting > 0);
        m_waiting->setText(tr("%n garment waits for such a blank and gets it first.|"
                              "%n garments wait for such blanks and get theirs first, by promise.",
                              nullptr, howMany(waiting)));
    }

    std::vector<BlankStyle> m_styles;
    PickList* m_style = nullptr;
    DeliveryGrid* m_units = nullptr;
    ShadePicker* m_shade = nullptr;
    DeliveryGrid* m_newUnits = nullptr;
    Label* m_waiting = nullptr;
};

} // namespace

Slip* makeReceiveBlanks(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    // Before there is any style, that is what is to be written down.
    const auto& styles = desk.shop()->facts.styles;
    if (std::ranges::all_of(styles, &BlankStyle::isRetired))
        return makeAddStyle(desk, matter, parent);
    return new ReceiveBlanksSlip(desk, matter, parent);
}

} // namespace holdfast::app
