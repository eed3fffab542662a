// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_tools.h"

#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/stepper.h"

#include <QBoxLayout>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kMostGap = 50; // mm
constexpr int kLine = 3;

} // namespace

BenchTools::BenchTools(QWidget* parent)
    : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    auto* row = new FlowLayout(nullptr, kSpace8);
    whole->addLayout(row);
    const auto button = [&](const QString& words, const QString& icon, const QKeySequence& key,
                            const char* name, void (BenchTools::*asked)()) {
        auto* made = new Button(words, icon);
        made->setObjectName(QLatin1String(name));
        made->setKey(key);
        connect(made, &Button::clicked, this, asked);
        row->addWidget(made);
        return made;
    };
    m_nest = button(tr("Nest again"), QStringLiteral("cutting-bench"), QKeySequence(Qt::Key_N), "nestAgain",
                    &BenchTools::nestAsked);
    m_end = button(tr("Keep the best"), {}, QKeySequence(Qt::Key_Escape), "endWork", &BenchTools::endAsked);
    m_end->setMinimumWidth(m_nest->sizeHint().width());
    m_end->hide();
    m_turn = button(tr("Turn"), QStringLiteral("turn"), QKeySequence(Qt::Key_R), "turnDecal",
                    &BenchTools::turnAsked);
    m_pin = button(tr("Pin"), QStringLiteral("needle"), QKeySequence(Qt::Key_P), "pinDecal",
                   &BenchTools::pinAsked);
    auto* gap = new QWidget;
    auto* inGap = new QHBoxLayout(gap);
    inGap->setContentsMargins(kSpace4, 0, 0, 0);
    inGap->setSpacing(kSpace8);
    inGap->addWidget(new Label(tr("Gap"), Type::Body));
    m_gap = new Stepper(tr("Gap between decals"));
    m_gap->setObjectName(QStringLiteral("gap"));
    m_gap->setRange(0, kMostGap);
    m_gap->setSuffix(tr(" mm"));
    m_gap->setValueWidth(56);
    connect(m_gap, &Stepper::stepped, this, &BenchTools::gapAsked);
    inGap->addWidget(m_gap);
    row->addWidget(gap);
}

void BenchTools::setGap(int millimetres) {
    m_gap->setValue(millimetres);
}

void BenchTools::setTurn(const QString& cannot) {
    m_turn->setCannot(cannot);
}

void BenchTools::setPin(const QString& cannot, bool isPinned) {
    m_pin->setCannot(cannot);
    m_pin->setText(isPinned ? tr("Unpin") : tr("Pin"));
}

void BenchTools::setNest(const QString& cannot) {
    m_nest->setCannot(cannot);
}

void BenchTools::setWork(Work work, double share) {
    if (m_work == work && m_share == share)
        return;
    const bool isOther = m_work != work;
    m_work = work;
    m_share = share;
    update();
    if (!isOther)
        return;
    const bool isBusy = work != Work::None;
    const bool hadKeyboard = m_nest->hasFocus() || m_end->hasFocus();
    if (isBusy) {
        m_end->setText(work == Work::Search ? tr("Keep the best") : tr("Stop writing"));
        m_end->setToolTip(work == Work::Search
                              ? tr("Looking for a shorter layout. Escape keeps the best so far.")
                              : tr("Writing. Escape stops it; a file that was there stays."));
        m_end->setAccessibleDescription(m_end->toolTip());
    }
    // One goes before the other comes: both together would ask for more room than the window may have.
    (isBusy ? m_nest : m_end)->hide();
    (isBusy ? m_end : m_nest)->show();
    if (hadKeyboard)
        (isBusy ? m_end : m_nest)->setFocus(Qt::OtherFocusReason);
}

void BenchTools::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(QRectF(0, height() - 1, width(), 1), dyes.thread);
    if (m_work == Work::None)
        return;
    painter.fillRect(QRectF(0, height() - kLine, width(), kLine), dyes.sunk);
    painter.fillRect(QRectF(0, height() - kLine, width() * std::clamp(m_share, 0.0, 1.0), kLine),
                     dyes.indigo);
}

} // namespace holdfast::app
