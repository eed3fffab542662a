// SPDX-License-Identifier: GPL-3.0-or-later
// The decals of a garment in the order they lie on each other, the one on the cloth first.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/option_list.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "core/press/layers.h"
#include "db/actions/order_actions.h"

#include <QBoxLayout>
#include <QCoreApplication>
#include <QKeyEvent>

#include <algorithm>

namespace holdfast::app {

namespace {

const QString kOrder = QStringLiteral("order"); // from the cloth up

class LayersSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(LayersSlip)

public:
    LayersSlip(ShopDesk& shopDesk, const Garment& garment, QWidget* parent)
        : FormSlip(shopDesk, tr("Reorder the layers"), garmentWords(shopDesk.shop()->facts, garment), parent)
        , m_garment(garment)
        , m_decals(garment.decals)
        , m_list(new OptionList(tr("Layers"))) {
        std::ranges::stable_sort(m_decals, {}, &Decal::layer);
        m_begunWith = order();
        form().note(
            tr("The first lies on the cloth and is pressed first. Alt with the arrow keys moves the one "
               "that is chosen."));
        form().own("layers", {}, m_list);
        auto* keys = new QWidget;
        auto* row = new QHBoxLayout(keys);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(kSpace8);
        const auto key = [&](const QString& words, const char* name, Qt::Key arrow, int by) {
            auto* button = new Button(words);
            button->setObjectName(QString::fromLatin1(name));
            button->setKey(QKeySequence(Qt::ALT | arrow));
            QObject::connect(button, &QAbstractButton::clicked, this, [this, by] { move(by); });
            row->addWidget(button, 1);
        };
        key(tr("Up"), "layerUp", Qt::Key_Up, -1);
        key(tr("Down"), "layerDown", Qt::Key_Down, 1);
        form().add(keys);
        showLayers(0);
        beginAt("layers");
        setAction(tr("Save the layers"));
    }

    // The order alone: which line is chosen is nothing that could be lost.
    QVariantMap typed() const override {
        return order() == m_begunWith ? QVariantMap() : QVariantMap{{kOrder, order()}};
    }

    void putBack(const QVariantMap& typed) override {
        FormSlip::putBack(typed);
        std::vector<Decal> ordered;
        for (const QString& id : typed.value(kOrder).toStringList())
            for (const Decal& decal : m_decals)
                if (QString::number(decal.id.value) == id)
                    ordered.push_back(decal);
        if (ordered.size() != m_decals.size())
            return; // a decal came or went since
        m_decals = std::move(ordered);
        showLayers(0);
    }

protected:
    void act() override {
        std::vector<DecalId> order;
        for (const Decal& decal : m_decals)
            order.push_back(decal.id);
        settle(db::reorderLayers(desk().file(), m_garment.id, order));
    }

private:
    QStringList order() const {
        QStringList ids;
        for (const Decal& decal : m_decals)
            ids.append(QString::number(decal.id.value));
        return ids;
    }

    void move(int by) {
        const int at = m_list->chosenAt();
        const int to = at + by;
        if (at < 0 || to < 0 || to >= static_cast<int>(m_decals.size()))
            return;
        std::swap(m_decals[static_cast<std::size_t>(at)], m_decals[static_cast<std::size_t>(to)]);
        showLayers(to);
    }

    void showLayers(int chosen) {
        QVector<Option> options;
        for (std::size_t at = 0; at < m_decals.size(); ++at)
            options.append(optionOf(at));
        m_list->setOptions(options, chosen);
    }

    Option optionOf(std::size_t at) const {
        const Decal& decal = m_decals[at];
        const Film& film = desk().shop()->facts.films.at(decal.film);
        Option option;
        option.text =
            tr("%1. %2, %3").arg(at + 1).arg(words(decal.describe()), words(placementName(decal.placement)));
        option.shade = colourOf(film.rgb);
        option.second = words(film.name());
        for (std::size_t below = 0; below < at; ++below) {
            const Decal& under = m_decals[below];
            if (!overlap(decal, under))
                continue;
            const Film& filmUnder = desk().shop()->facts.films.at(under.film);
            if (!filmUnder.mayLieUnder)
                return held(option, tr("Nothing may lie on %1.").arg(words(filmUnder.name())));
            if (!film.mayLieOver)
                return held(option, tr("%1 may not lie on another film.").arg(words(film.name())));
            option.second = tr("%1, on %2").arg(words(film.name()), words(under.describe()));
        }
        return option;
    }

    static Option held(Option option, const QString& why) {
        option.second = why;
        option.iconName = QStringLiteral("hold");
        option.tone = Tone::Held;
        return option;
    }

    Garment m_garment;
    std::vector<Decal> m_decals;
    QStringList m_begunWith;
    OptionList* m_list;
};

} // namespace

Slip* makeLayers(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto garment = garmentIn(desk, matter);
    return garment ? new LayersSlip(desk, *garment, parent) : nullptr;
}

} // namespace holdfast::app
