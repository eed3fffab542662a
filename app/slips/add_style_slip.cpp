// SPDX-License-Identifier: GPL-3.0-or-later
// A blank style written down. Its label is read next: that is what holds its garments.
#include "app/desk/formats.h"
#include "app/slips/colour_rows.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/theme/drawings.h"
#include "app/widgets/field.h"
#include "app/widgets/switch.h"
#include "core/trade/unit_words.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace holdfast::app {

namespace {

constexpr std::int64_t kHeaviest = 10'000; // g
constexpr int kObstacles = static_cast<int>(Obstacle::ThickHem) + 1;

// "long-sleeve" → "Long sleeve"
QString outlineWords(const QString& outline) {
    return words(withCapital(plain(QString(outline).replace(u'-', u' '))));
}

std::vector<std::string> sizesIn(const QString& text) {
    std::vector<std::string> sizes;
    static const QRegularExpression between(QStringLiteral("[,;]"));
    for (const QString& size : text.split(between, Qt::SkipEmptyParts))
        if (!size.trimmed().isEmpty())
            sizes.push_back(plain(size));
    return sizes;
}

class AddStyleSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(AddStyleSlip)

public:
    AddStyleSlip(ShopDesk& shopDesk, QWidget* parent)
        : FormSlip(shopDesk, tr("Add a blank style"),
                   tr("A garment as its maker sells it, in sizes and colours."), parent) {
        addGarment();
        addWayOfWork();
        setAction(tr("Add the style"));
        setLong();
    }

protected:
    void act() override {
        BlankStyle style;
        style.name = plain(form().text("name"));
        const int outline = form().chosen("outline");
        style.outline = plain(garmentOutlines().value(outline));
        style.sizes = sizesIn(form().text("sizes"));
        style.colours = m_colours->colours();
        style.weight = Grams{form().whole("weight", 1, kHeaviest)};
        style.cost = form().money("cost", desk().currency());
        for (int at = 0; at < kObstacles; ++at)
            if (const int way = form().chosen(obstaclePart(at)); way > 0)
                style.obstacles.push_back({static_cast<Obstacle>(at), wayAt(way)});
        style.forChild = form().isOn("forChild");
        style.sleepwear = form().isOn("sleepwear");
        style.hasCords = form().isOn("hasCords");
        style.lawCheckedBy = plain(form().text("lawCheckedBy"));
        style.notPrewashedBecause = plain(form().text("reason"));
        if (style.sizes.empty())
            form().setError("sizes", tr("Sizes: name at least one, such as M; commas between."));
        if (const QString wrong = m_colours->wrong(); !wrong.isEmpty())
            form().setError("colours", wrong);
        if (!form().isSound())
            return;
        const auto added = db::addStyle(desk().file(), style);
        if (!added.ok())
            return say(added.error());
        finish();
        SlipTarget next;
        next.style = *added;
        emit desk().slipAsked(SlipName::ReadLabel, next);
    }

private:
    void addGarment() {
        form().line("name", tr("Name"))->setPlaceholder(tr("e.g. Tee"));
        QVector<ChoiceItem> outlines;
        for (const QString& outline : garmentOutlines())
            outlines.append(ChoiceItem{.text = outlineWords(outline), .outline = outline});
        form().tiles("outline", tr("Drawn as"), Choice::Shape::Picture, outlines);
        form().line("sizes", tr("Sizes, commas between"))->setPlaceholder(tr("e.g. S, M, L, XL"));
        m_colours = new ColourRows;
        form().own("colours", tr("Colours"), m_colours, [rows = m_colours] { return rows->isFilled(); });
        QObject::connect(m_colours, &ColourRows::changed, this, [this] { form().setError("colours", {}); });
        form().pair();
        form().number("weight", tr("Weight of one"), tr("g"));
        form().line("cost", tr("Cost of one, %1").arg(words(desk().currency().sign)));
    }

    void addWayOfWork() {
        form().section(tr("In the way of the platen"));
        const QVector<PickItem> ways{
            {tr("none")}, {tr("in the way")}, {tr("pressing pillow")}, {tr("turned")}, {tr("small platen")}};
        for (int at = 0; at < kObstacles; ++at) {
            if (at % 2 == 0)
                form().pair();
            form().list(obstaclePart(at), words(withCapital(obstacleName(static_cast<Obstacle>(at)))), ways,
                        0);
        }
        form().section(tr("Washing"));
        form()
            .line("reason", tr("Not washed first, because"))
            ->setPlaceholder(tr("empty: it is washed first"));
        form().optional("reason");
        form().section(tr("Rules that may apply"));
        form().turn("forChild", tr("For a child"));
        form().turn("sleepwear", tr("Sleepwear"));
        form().turn("hasCords", tr("Has cords"));
        form().line("lawCheckedBy", tr("Local law checked by"));
        form().optional("lawCheckedBy");
        const auto showLaw = [this] {
            form().setShown("lawCheckedBy",
                            form().isOn("forChild") || form().isOn("sleepwear") || form().isOn("hasCords"));
        };
        QObject::connect(&form(), &Form::edited, this, showLaw);
        showLaw();
    }

    static std::string obstaclePart(int at) { return "obstacle-" + std::to_string(at); }

    // The list says none and unsolved before the ways.
    static std::optional<WayRound> wayAt(int place) {
        return place < 2 ? std::nullopt : std::optional{static_cast<WayRound>(place - 2)};
    }

    ColourRows* m_colours = nullptr;
};

} // namespace

Slip* makeAddStyle(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return new AddStyleSlip(desk, parent);
}

} // namespace holdfast::app
