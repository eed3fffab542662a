// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"
#include "app/places/back_room/retired_lines.h"
#include "app/places/back_room/tools_sheets.h"
#include "core/press/check_figures.h"

#include <QCoreApplication>

#include <cmath>

namespace holdfast::app {

namespace {

QString plainNumber(double number) {
    return valueWords(Decimal{number});
}

class PressWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    PressWords(const ReckonedShop& shop, const Press& press)
        : m_shop(shop)
        , m_press(press)
        , m_check(shop.facts.lastCheck(press.id)) {
        if (m_check && m_check->readings.empty())
            m_check = nullptr;
    }

    bool isDue() const {
        return !m_press.isRetired && (!m_check || m_shop.now.instant - m_check->at > m_press.checkEvery);
    }

    void addTo(RoomSheet& sheet) const {
        SlipTarget matter;
        matter.press = m_press.id;
        RoomLine line;
        line.name = words(m_press.name);
        line.text = lastCheck();
        line.detail = build();
        addState(line);
        line.offer = tr("Check press");
        line.deed = OpenSlip{SlipName::CheckPress, matter};
        line.otherOffer = tr("Change press");
        line.otherDeed = OpenSlip{SlipName::ChangePress, matter};
        sheet.lines.append(line);
    }

private:
    QString lastCheck() const {
        if (!m_check)
            return tr("Never checked. A check is due every %1.").arg(dayCount(m_press.checkEvery));
        const CheckFigures figures = figuresOf(*m_check);
        const QString when = date(dateOf(m_shop.now.toLocal(m_check->at)));
        return tr("Checked %1 at %2 by %3: %4, hottest and coolest spot %5 °C apart. Due every %6.")
            .arg(when, celsius(m_check->set), words(m_check->by), averageWords(figures.meanOffset),
                 plainNumber(figures.spread), dayCount(m_press.checkEvery));
    }

    static QString averageWords(double offset) {
        const QString off = plainNumber(std::abs(std::round(offset * 10) / 10));
        if (off == plainNumber(0))
            return tr("on average as set");
        return offset > 0 ? tr("on average %1 °C too hot").arg(off)
                          : tr("on average %1 °C too cool").arg(off);
    }

    static QString signedNumber(double number) {
        const double shown = std::round(number * 10) / 10;
        return (shown < 0 ? QStringLiteral("−") : QString()) + plainNumber(std::abs(shown));
    }

    QString build() const {
        QString text = tr("Platen %1 × %2 mm; heats %3, cools %4 °C a minute; may be off by %5 °C on "
                          "average, spots by %6 °C")
                           .arg(m_press.platenWidth.value)
                           .arg(m_press.platenHeight.value)
                           .arg(plainNumber(m_press.heatsPerMinute), plainNumber(m_press.coolsPerMinute),
                                plainNumber(m_press.tolerance.value), plainNumber(m_press.evenWithin.value));
        if (m_press.hasSmallPlaten)
            text = tr("%1; has a small platen").arg(text);
        return text;
    }

    void addState(RoomLine& line) const {
        if (m_press.isRetired) {
            markRetired(line);
            return;
        }
        if (m_check) {
            const CheckFigures figures = figuresOf(*m_check);
            if (std::abs(figures.meanOffset) > m_press.tolerance.value ||
                figures.spread > m_press.evenWithin.value) {
                line.tone = Tone::Held;
                line.stateIcon = QStringLiteral("hold");
                line.state = std::abs(figures.meanOffset) > m_press.tolerance.value
                                 ? tr("dial in %1 °C").arg(signedNumber(figures.dialIn))
                                 : tr("uneven");
                return;
            }
        }
        if (isDue()) {
            line.tone = Tone::Caution;
            line.stateIcon = QStringLiteral("caution");
            line.state = tr("check due");
        } else {
            line.tone = Tone::Ready;
            line.stateIcon = QStringLiteral("done");
            line.state = tr("in order");
        }
    }

    const ReckonedShop& m_shop;
    const Press& m_press;
    const PressCheck* m_check;
};

} // namespace

RoomSheet pressesSheet(const ReckonedShop& shop) {
    RoomSheet sheet;
    sheet.title = PressWords::tr("Presses and their checks");
    int due = 0;
    const int count = addOfferedFirst(sheet, shop.facts.presses, [&](const Press& press) {
        const PressWords said(shop, press);
        said.addTo(sheet);
        if (said.isDue())
            ++due;
    });
    sheet.summary = count == 0 ? PressWords::tr("none yet")
                    : due > 0  ? PressWords::tr("%1, %2 to be checked").arg(count).arg(due)
                               : PressWords::tr("%1, checked").arg(count);
    sheet.intro =
        count == 0
            ? PressWords::tr("Presses are listed here, each with its platen and its checks.")
            : PressWords::tr(
                  "To check a press, read the marked spots of its platen and compare them with what is set.");
    sheet.acts.append({PressWords::tr("Add a press"), QStringLiteral("plus"), QKeySequence(Qt::Key_A),
                       OpenSlip{SlipName::AddPress, SlipTarget{}}});
    sheet.note =
        PressWords::tr("A platen burns. Its wiring is mains: repairs are for a licensed electrician.");
    return sheet;
}

} // namespace holdfast::app
