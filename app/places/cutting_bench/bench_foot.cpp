// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_foot.h"

#include "app/places/cutting_bench/bench_model.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/theme/measures.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"

#include <QBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kHeight = 52;
constexpr int kRoomForKeys = 820;
constexpr int kLeastTitle = 120;

} // namespace

BenchFoot::BenchFoot(const BenchModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model) {
    setFixedHeight(kHeight);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kSpace16, 0, kSpace16, 0);
    row->setSpacing(kSpace16);
    m_title = new ElidingLabel({}, Type::BodyStrong);
    m_title->setObjectName(QStringLiteral("chosenDecal"));
    m_place = new Label({}, Type::Support, &Tokens::ink2);
    m_place->setObjectName(QStringLiteral("chosenPlace"));
    m_size = new Label({}, Type::Support, &Tokens::ink2);
    m_size->setObjectName(QStringLiteral("chosenSize"));
    row->addWidget(m_title, 1);
    row->addWidget(m_place);
    row->addWidget(m_size);
    m_keys = new QWidget;
    auto* keys = new QHBoxLayout(m_keys);
    keys->setContentsMargins(0, 0, 0, 0);
    keys->setSpacing(kSpace12);
    keys->addWidget(new Label(tr("arrows 1 mm"), Type::Small, &Tokens::ink2));
    keys->addWidget(new KeyHint(tr("10 mm"), QKeySequence(Qt::Key_Shift), KeyHint::Order::KeyThenWords));
    keys->addWidget(new KeyHint(tr("leave out"), QKeySequence(Qt::Key_Delete), KeyHint::Order::KeyThenWords));
    row->addWidget(m_keys);
}

QSize BenchFoot::minimumSizeHint() const {
    return {2 * kSpace16 + kLeastTitle + m_place->minimumSizeHint().width() +
                m_size->minimumSizeHint().width() + 2 * kSpace16,
            kHeight};
}

void BenchFoot::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    showKeys();
}

void BenchFoot::showKeys() {
    m_keys->setVisible(width() >= kRoomForKeys && m_model.film() && !m_model.nests().empty());
}

void BenchFoot::refresh() {
    const auto chosen = m_model.chosen();
    const NestedDecal* lies = chosen ? m_model.lying(*chosen) : nullptr;
    showKeys();
    m_place->setVisible(lies != nullptr);
    m_size->setVisible(lies != nullptr);
    if (!lies) {
        m_title->setText(m_model.film() && !m_model.nests().empty() ? tr("Tab or a click chooses a decal")
                                                                    : QString());
        return;
    }
    const DecalOnGarment decal = m_model.decal(*chosen);
    const auto [at, count] = m_model.amongAlike(*chosen);
    const QString title = decalTitle(m_model.facts(), decal);
    m_title->setText(count > 1 ? tr("%1, %2 of %3").arg(title).arg(at).arg(count) : title);
    const QString place = tr("at %1, %2 mm").arg(lies->lies.along.value).arg(lies->lies.across.value);
    m_place->setText(lies->isPinned ? tr("%1, pinned").arg(place) : place);
    m_size->setText(sizeWords(decal.decal->width, decal.decal->height));
}

} // namespace holdfast::app
