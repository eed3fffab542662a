// SPDX-License-Identifier: GPL-3.0-or-later
// What is noted of a blank style: that it is pressed unwashed, how its obstacles are got round, who looked up
// the law.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/field.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

constexpr int kWays = static_cast<int>(WayRound::SmallPlaten) + 1;

class NotPrewashedSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(NotPrewashedSlip)

public:
    NotPrewashedSlip(ShopDesk& shopDesk, const BlankStyle& style, QWidget* parent)
        : FormSlip(shopDesk, tr("Press unwashed"), words(style.name), parent)
        , m_style(style.id)
        , m_wasMarked(!style.washedFirst()) {
        form().note(
            tr("Blanks are washed first, because they shrink and film does not grip the finish of new cloth. "
               "A style that must not be washed is pressed unwashed, and its garments say why."));
        auto* reason = form().line("reason", tr("Why it is not washed"), words(style.notPrewashedBecause));
        if (m_wasMarked)
            form().note(tr("Leave it empty and the style is washed first again."));
        QObject::connect(reason, &Field::edited, this, [this] { nameAction(); });
        beginAt("reason");
        nameAction();
    }

protected:
    void act() override {
        const std::string reason = plain(form().text("reason"));
        if (!m_wasMarked || !reason.empty()) {
            const auto sound =
                typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
            if (!sound.ok())
                return say(sound.error());
        }
        settle(db::markNotPrewashed(desk().file(), m_style, reason));
    }

private:
    void nameAction() {
        const bool isWashed = m_wasMarked && form().text("reason").isEmpty();
        setAction(isWashed ? tr("Wash first again") : tr("Press unwashed"));
    }

    BlankStyleId m_style;
    bool m_wasMarked;
};

class WayRoundSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(WayRoundSlip)

public:
    WayRoundSlip(ShopDesk& shopDesk, const BlankStyle& style, QWidget* parent)
        : FormSlip(shopDesk, tr("Choose a way round"), words(style.name), parent)
        , m_style(style.id)
        , m_obstacles(style.obstacles) {
        form().note(tr("Anything between platen and cloth keeps the heat from the film. Choose how this "
                       "style is pressed anyway."));
        QStringList ways;
        for (int way = 0; way < kWays; ++way)
            ways.append(words(withCapital(wayRoundName(static_cast<WayRound>(way)))));
        for (std::size_t at = 0; at < m_obstacles.size(); ++at) {
            const auto& [obstacle, way] = m_obstacles[at];
            form().segments(partName(at), words(withCapital(obstacleName(obstacle))), ways,
                            way ? static_cast<int>(*way) : -1);
        }
        setAction(tr("Save the way round"));
    }

protected:
    void act() override {
        std::vector<WayRound> ways;
        for (std::size_t at = 0; at < m_obstacles.size(); ++at)
            ways.push_back(static_cast<WayRound>(form().chosen(partName(at))));
        if (!form().isSound())
            return;
        std::vector<ObstacleOnStyle> changed;
        for (std::size_t at = 0; at < m_obstacles.size(); ++at)
            if (m_obstacles[at].way != ways[at])
                changed.push_back({m_obstacles[at].obstacle, ways[at]});
        if (changed.empty())
            finish();
        else
            settle(db::chooseWaysRound(desk().file(), m_style, changed));
    }

private:
    static std::string partName(std::size_t at) { return "way-" + std::to_string(at); }

    BlankStyleId m_style;
    std::vector<ObstacleOnStyle> m_obstacles;
};

class LawCheckedSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(LawCheckedSlip)

public:
    LawCheckedSlip(ShopDesk& shopDesk, const BlankStyle& style, QWidget* parent)
        : FormSlip(shopDesk, tr("Note who checked"), words(style.name), parent)
        , m_style(style.id) {
        QStringList kinds;
        if (style.forChild)
            kinds.append(tr("for a child"));
        if (style.sleepwear)
            kinds.append(tr("sleepwear"));
        if (style.hasCords)
            kinds.append(tr("has cords"));
        const QString kind =
            kinds.isEmpty() ? QString() : tr("This style: %1. ").arg(kinds.join(QStringLiteral(", ")));
        form().note(kind + tr("A rule of the place you sell at may apply to its cloth, cords, small parts or "
                              "marking. Look it up, or ask who knows. The program certifies nothing."));
        form().line("who", tr("Who checked"), words(style.lawCheckedBy));
        beginAt("who");
        setAction(tr("Save who checked"));
    }

protected:
    void act() override { settle(db::noteLawChecked(desk().file(), m_style, plain(form().text("who")))); }

private:
    BlankStyleId m_style;
};

} // namespace

Slip* makeMarkNotPrewashed(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto style = styleIn(desk, matter);
    return style ? new NotPrewashedSlip(desk, *style, parent) : nullptr;
}

Slip* makeChooseWayRound(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto style = styleIn(desk, matter);
    return style && !style->obstacles.empty() ? new WayRoundSlip(desk, *style, parent) : nullptr;
}

Slip* makeNoteLawChecked(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto style = styleIn(desk, matter);
    return style ? new LawCheckedSlip(desk, *style, parent) : nullptr;
}

} // namespace holdfast::app
