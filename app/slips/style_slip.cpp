// SPDX-License-Identifier: GPL-3.0-or-later
// A blank style written down, like another one or from the beginning, or changed. The label of a new one is
// read next: that is what holds its garments.
#include "app/desk/formats.h"
#include "app/slips/colour_rows.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/theme/drawings.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "core/facts/size_changes.h"
#include "core/trade/unit_words.h"
#include "db/actions/blank_actions.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::int64_t kHeaviest = 10'000; // g
constexpr int kObstacles = static_cast<int>(Obstacle::ThickHem) + 1;

// "long-sleeve" → "Long sleeve"
QString outlineWords(const QString& outline) {
    return words(withCapital(plain(QString(outline).replace(u'-', u' '))));
}

QString sizesText(const std::vector<std::string>& sizes) {
    QStringList list;
    for (const std::string& size : sizes)
        list.append(words(size));
    return list.join(QStringLiteral(", "));
}

std::vector<std::string> sizesIn(const QString& text) {
    std::vector<std::string> sizes;
    static const QRegularExpression between(QStringLiteral("[,;]"));
    for (const QString& size : text.split(between, Qt::SkipEmptyParts))
        if (!size.trimmed().isEmpty())
            sizes.push_back(plain(size));
    return sizes;
}

// Sizes that blanks hang of or garments are ordered in.
bool isSizeInUse(const ShopFacts& facts, BlankStyleId style, const std::string& size) {
    return std::ranges::any_of(facts.lots,
                               [&](const BlankLot& lot) {
                                   return lot.style == style && lot.size == size && lot.unitsLeft > 0;
                               }) ||
           std::ranges::any_of(facts.garments, [&](const Garment& garment) {
               return garment.style == style && garment.size == size && !garment.handedOverAt;
           });
}

// What a style asks, whether new, like another one, or there already.
class StyleSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(StyleSlip)

public:
    static StyleSlip* ofNewOne(ShopDesk& desk, QWidget* parent) {
        auto* slip =
            new StyleSlip(desk, tr("Add a blank style"),
                          tr("A garment as its maker sells it, in sizes and colours."), BlankStyle{}, parent);
        slip->setAction(tr("Add the style"));
        slip->setLong();
        return slip;
    }
    // All but the name is as it is of the other one, its label too.
    static StyleSlip* like(ShopDesk& desk, const BlankStyle& other, QWidget* parent) {
        BlankStyle style = other;
        style.id = {};
        style.name.clear();
        style.isRetired = false;
        for (Colour& colour : style.colours)
            colour.id = {};
        auto* slip = new StyleSlip(
            desk, tr("Add a style like it"),
            tr("All but the name is that of %1, its label too.").arg(words(other.name)), style, parent);
        slip->setAction(tr("Add the style"));
        return slip;
    }
    // Begins at the cost, which changes each season.
    static StyleSlip* of(ShopDesk& desk, const BlankStyle& style, QWidget* parent) {
        auto* slip = new StyleSlip(desk, tr("Change a blank style"), words(style.name), style, parent);
        slip->setAction(tr("Save the style"));
        slip->setLong();
        slip->beginAt("cost");
        return slip;
    }

protected:
    void act() override {
        const BlankStyle style = read();
        if (!form().isSound())
            return;
        if (!isNew()) {
            settle(db::changeStyle(desk().file(), style));
            return;
        }
        const auto added = db::addStyle(desk().file(), style);
        if (!added.ok())
            return say(added.error());
        finish();
        if (style.label)
            return;
        SlipTarget next;
        next.style = *added;
        emit desk().slipAsked(SlipName::ReadLabel, next);
    }

private:
    StyleSlip(ShopDesk& shopDesk, const QString& title, const QString& about, const BlankStyle& style,
              QWidget* parent)
        : FormSlip(shopDesk, title, about, parent)
        , m_before(style) {
        addGarment();
        addWayOfWork();
        if (!isNew())
            addRetiring();
    }

    bool isNew() const { return m_before.id == BlankStyleId{}; }
    bool isEmpty() const { return m_before.colours.empty(); }

    BlankStyle read() {
        BlankStyle style = m_before;
        style.name = plain(form().text("name"));
        const int outline = form().chosen("outline");
        style.outline = plain(garmentOutlines().value(outline));
        style.sizes = sizesIn(form().text("sizes"));
        style.colours = m_colours->colours();
        style.weight = Grams{form().whole("weight", 1, kHeaviest)};
        style.cost = form().money("cost", desk().currency());
        style.supplier = plain(form().text("supplier"));
        style.obstacles.clear();
        for (int at = 0; at < kObstacles; ++at)
            if (const int way = form().chosen(obstaclePart(at)); way > 0)
                style.obstacles.push_back({static_cast<Obstacle>(at), wayAt(way)});
        style.forChild = form().isOn("forChild");
        style.sleepwear = form().isOn("sleepwear");
        style.hasCords = form().isOn("hasCords");
        style.lawCheckedBy = plain(form().text("lawCheckedBy"));
        style.notPrewashedBecause = plain(form().text("reason"));
        if (!isNew())
            style.isRetired = form().isOn("retired");
        if (style.sizes.empty())
            form().setError("sizes", tr("Sizes: name at least one, such as M; commas between."));
        if (const QString wrong = m_colours->wrong(); !wrong.isEmpty())
            form().setError("colours", wrong);
        return style;
    }

    void addGarment() {
        form().line("name", tr("Name"), words(m_before.name))->setPlaceholder(tr("e.g. Tee"));
        QVector<ChoiceItem> outlines;
        for (const QString& outline : garmentOutlines())
            outlines.append(ChoiceItem{.text = outlineWords(outline), .outline = outline});
        form().tiles("outline", tr("Drawn as"), Choice::Shape::Picture, outlines,
                     static_cast<int>(garmentOutlines().indexOf(words(m_before.outline))));
        form()
            .line("sizes", tr("Sizes, commas between"), sizesText(m_before.sizes))
            ->setPlaceholder(tr("e.g. S, M, L, XL"));
        m_sizeChanges = form().note({});
        m_sizeChanges->setObjectName(QStringLiteral("sizeChanges"));
        QObject::connect(&form(), &Form::edited, this, [this] { showSizeChanges(); });
        showSizeChanges();
        m_colours = new ColourRows(m_before.colours);
        form().own("colours", tr("Colours"), m_colours, [rows = m_colours] { return rows->isFilled(); });
        QObject::connect(m_colours, &ColourRows::changed, this, [this] { form().setError("colours", {}); });
        form().pair();
        form().number("weight", tr("Weight of one"), tr("g"),
                      isEmpty() ? QString() : QString::number(m_before.weight.value));
        form().line("cost", tr("Cost of one, %1").arg(words(desk().currency().sign)),
                    isEmpty() ? QString() : moneyBare(m_before.cost, desk().currency()));
        form().line("supplier", tr("Bought from"), words(m_before.supplier));
        form().optional("supplier");
    }

    // Before it is saved: a size typed in the place of another is its new name, wherever it is used.
    void showSizeChanges() {
        QStringList changes;
        if (!isNew()) {
            const ShopFacts& facts = desk().shop()->facts;
            const SizeChanges sizes =
                sizeChanges(m_before.sizes, sizesIn(form().text("sizes")),
                            [&](const std::string& size) { return isSizeInUse(facts, m_before.id, size); });
            for (const auto& [was, now] : sizes.renamed)
                changes.append(tr("%1 is called %2 from now on, on the rail and in orders.")
                                   .arg(words(was), words(now)));
            for (const std::string& size : sizes.gone)
                changes.append(tr("%1 is taken away.").arg(words(size)));
        }
        m_sizeChanges->setText(changes.join(u' '));
        m_sizeChanges->setVisible(!changes.isEmpty());
    }

    void addRetiring() {
        form().section(tr("In use"));
        form().turn("retired", tr("Retired: not offered any more"), m_before.isRetired);
        std::int64_t left = 0;
        for (const BlankLot& lot : desk().shop()->facts.lots)
            left += lot.style == m_before.id ? lot.unitsLeft : 0;
        Label* note = form().note(left > 0 ? tr("%n blank of it is left, for what is ordered.|%n blanks of "
                                                "it are left, for what is ordered.",
                                                nullptr, howMany(left))
                                           : tr("Orders that have it keep it."));
        const auto show = [this, note] { note->setVisible(form().isOn("retired")); };
        QObject::connect(&form(), &Form::edited, this, show);
        show();
    }

    int wayOf(int at) const {
        const auto found =
            std::ranges::find(m_before.obstacles, static_cast<Obstacle>(at), &ObstacleOnStyle::obstacle);
        if (found == m_before.obstacles.end())
            return 0;
        return found->way ? 2 + static_cast<int>(*found->way) : 1;
    }

    void addWayOfWork() {
        form().section(tr("In the way of the platen"));
        const QVector<PickItem> ways{
            {tr("none")}, {tr("in the way")}, {tr("pressing pillow")}, {tr("turned")}, {tr("small platen")}};
        for (int at = 0; at < kObstacles; ++at) {
            if (at % 2 == 0)
                form().pair();
            form().list(obstaclePart(at), words(withCapital(obstacleName(static_cast<Obstacle>(at)))), ways,
                        wayOf(at));
        }
        form().section(tr("Washing"));
        form()
            .line("reason", tr("Not washed first, because"), words(m_before.notPrewashedBecause))
            ->setPlaceholder(tr("empty: it is washed first"));
        form().optional("reason");
        form().section(tr("Rules that may apply"));
        form().turn("forChild", tr("For a child"), m_before.forChild);
        form().turn("sleepwear", tr("Sleepwear"), m_before.sleepwear);
        form().turn("hasCords", tr("Has cords"), m_before.hasCords);
        form().line("lawCheckedBy", tr("Local law checked by"), words(m_before.lawCheckedBy));
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

    BlankStyle m_before;
    ColourRows* m_colours = nullptr;
    Label* m_sizeChanges = nullptr;
};

} // namespace

Slip* makeAddStyle(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return StyleSlip::ofNewOne(desk, parent);
}

Slip* makeCopyStyle(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto style = styleIn(desk, matter);
    return style ? StyleSlip::like(desk, *style, parent) : nullptr;
}

Slip* makeChangeStyle(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto style = styleIn(desk, matter);
    return style ? StyleSlip::of(desk, *style, parent) : nullptr;
}

} // namespace holdfast::app
