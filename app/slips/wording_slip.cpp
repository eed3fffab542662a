// SPDX-License-Identifier: GPL-3.0-or-later
// The customer's word on what will be cut: shown as it will be, mended where they want it otherwise.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/wording_outline.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "core/trade/limits.h"
#include "db/actions/order_actions.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kPictureHeight = 96;

// A decal in its film on the cloth it is for.
class DecalPicture : public QWidget {
public:
    DecalPicture(const DecalContent& content, const QColor& film, const QColor& cloth)
        : m_content(content)
        , m_film(film)
        , m_cloth(cloth) {
        setFixedHeight(kPictureHeight);
    }

    void setWording(const QString& text) {
        if (auto* wording = std::get_if<Wording>(&m_content); wording && wording->text != plain(text)) {
            wording->text = plain(text);
            wording->outline.clear(); // other words are drawn with the letters that are here
        }
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QRectF box(rect());
        paintBox(painter, box, kButtonRadius, m_cloth, outlineOf(m_cloth));
        const QRectF inner = box.adjusted(kSpace16, kSpace12, -kSpace16, -kSpace12);
        if (const auto* wording = std::get_if<Wording>(&m_content))
            paintWording(painter, inner, *wording, m_film);
        else
            paintDecal(painter, inner, words(std::get<Artwork>(m_content).name), m_film);
    }

private:
    DecalContent m_content;
    QColor m_film;
    QColor m_cloth;
};

class ConfirmWordingSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ConfirmWordingSlip)

public:
    ConfirmWordingSlip(ShopDesk& shopDesk, const OrderInView& inView, std::vector<Decal> decals,
                       QWidget* parent)
        : FormSlip(shopDesk, tr("Confirm with the customer"), aboutOf(inView), parent)
        , m_decals(std::move(decals)) {
        for (std::size_t at = 0; at < m_decals.size(); ++at)
            addDecal(inView, at);
        form().segments("agreed", tr("They agreed"), {tr("At the table"), tr("By phone"), tr("By message")});
        form().line("how", tr("Or another way"))->setPlaceholder(tr("in your own words"));
        form().optional("how");
        setAction(tr("Confirm the wording"));
        beginAt("agreed");
    }

protected:
    void act() override {
        const std::string how = howTheyAgreed();
        for (std::size_t at = 0; at < m_decals.size(); ++at)
            checkWording(at);
        if (!form().isSound())
            return;
        std::vector<db::AgreedDecal> agreed;
        for (std::size_t at = 0; at < m_decals.size(); ++at) {
            const Decal& decal = m_decals[at];
            const auto* wording = std::get_if<Wording>(&decal.content);
            db::AgreedDecal& each = agreed.emplace_back();
            each.decal = decal.id;
            if (!wording)
                continue;
            Wording asked = *wording;
            if (!decal.isCut() && plain(form().text(partName(at))) != wording->text) {
                asked = Wording{plain(form().text(partName(at))), wording->face};
                each.wording = asked.text;
            }
            each.outline = outlineToKeep(asked);
        }
        settle(db::confirmWordings(desk().file(), agreed, how));
    }

private:
    static QString aboutOf(const OrderInView& inView) {
        return inView.customer.phone.empty()
                   ? orderWords(inView)
                   : tr("%1, %2").arg(orderWords(inView), words(inView.customer.phone));
    }

    static std::string partName(std::size_t at) { return "wording-" + std::to_string(at + 1); }

    void addDecal(const OrderInView& inView, std::size_t at) {
        const Decal& decal = m_decals[at];
        const auto garment = std::ranges::find(inView.garments, decal.garment, &Garment::id);
        const ShopFacts& facts = desk().shop()->facts;
        const Film* film = facts.films.find(decal.film);
        const BlankStyle* style = facts.styles.find(garment->style);
        const Colour* colour = style ? style->colour(garment->colour) : nullptr;
        form().note(tr("%1: %2, %3")
                        .arg(words(garmentLabel(inView.order, *garment)), words(decal.describe()),
                             words(placementName(decal.placement))));
        auto* picture = new DecalPicture(decal.content, film ? colourOf(film->rgb) : tokens().ink,
                                         colour ? colourOf(colour->rgb) : tokens().sunk);
        form().add(picture);
        const auto* wording = std::get_if<Wording>(&decal.content);
        if (!wording || decal.isCut())
            return;
        auto* field = form().line(partName(at), tr("Wording"), words(wording->text));
        QObject::connect(field, &Field::edited, picture,
                         [picture](const QString& text) { picture->setWording(text); });
    }

    void checkWording(std::size_t at) {
        if (!std::holds_alternative<Wording>(m_decals[at].content) || m_decals[at].isCut())
            return;
        const auto sound = typedText(plain(form().text(partName(at))),
                                     {.field = "wording", .what = phrase("The wording"), .most = 60});
        if (!sound.ok())
            return form().setError(partName(at), words(sound.error().message));
        const auto& wording = std::get<Wording>(m_decals[at].content);
        if (*sound == wording.text)
            return; // what is kept with it is cut
        const QString without = lettersWithoutShape(words(*sound), wording.face);
        if (!without.isEmpty())
            form().setError(partName(at), tr("No letter shape for %1 on this computer.").arg(without));
    }

    std::string howTheyAgreed() {
        const std::string own = plain(form().text("how"));
        if (!own.empty()) {
            const auto sound = typedText(own, {.field = "how", .what = phrase("How the customer agreed")});
            if (!sound.ok())
                say(sound.error());
            return own;
        }
        // As it is written in the history, in the words of the shop file.
        static constexpr const char* kHow[] = {"at the table", "by phone", "by message"};
        return kHow[form().chosen("agreed")];
    }

    std::vector<Decal> m_decals;
};

} // namespace

Slip* makeConfirmWording(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    if (!inView)
        return nullptr;
    std::vector<Decal> decals;
    for (const Garment& garment : inView->garments) {
        if (matter.garment && garment.id != *matter.garment)
            continue;
        for (const Decal& decal : garment.decals)
            if (matter.decal ? decal.id == *matter.decal : !decal.isConfirmed())
                decals.push_back(decal);
    }
    return decals.empty() ? nullptr : new ConfirmWordingSlip(desk, *inView, std::move(decals), parent);
}

} // namespace holdfast::app
