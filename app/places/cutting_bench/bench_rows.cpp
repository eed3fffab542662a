// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_rows.h"

#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"

#include <QBoxLayout>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kFirstRows = 12;
constexpr int kMoreRows = 100;
constexpr int kActHeight = 32;

void empty(QLayout* layout) {
    while (QLayoutItem* item = layout->takeAt(0)) {
        if (QWidget* widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        }
        delete item;
    }
}

} // namespace

BenchRows::BenchRows(const QString& title, const QString& name, QWidget* parent)
    : QWidget(parent)
    , m_name(name)
    , m_most(kFirstRows) {
    setObjectName(name);
    setAccessibleName(title);
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(0, kSpace8, 0, 0);
    m_column->setSpacing(kSpace4);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(0, 0, 0, 0);
    m_title = new Label(title, Type::BodyStrong);
    head->addWidget(m_title, 1);
    auto* all = new Button({}, Button::Kind::Quiet);
    all->setObjectName(name + QStringLiteral("All"));
    all->setTargetHeight(kActHeight);
    all->hide();
    connect(all, &Button::clicked, this, &BenchRows::actedOnAll);
    m_actOnAll = all;
    head->addWidget(all);
    m_column->addLayout(head);
    m_lines = new QVBoxLayout;
    m_lines->setContentsMargins(0, 0, 0, 0);
    m_lines->setSpacing(kSpace4);
    m_column->addLayout(m_lines);
    hide();
}

void BenchRows::setActOnAll(const QString& words) {
    auto* all = static_cast<Button*>(m_actOnAll);
    all->setText(words);
    all->setVisible(!words.isEmpty());
}

void BenchRows::setRows(const QVector<BenchRow>& rows) {
    if (rows == m_rows)
        return;
    m_rows = rows;
    showRows();
}

void BenchRows::showMore() {
    m_most += kMoreRows;
    showRows();
}

void BenchRows::showRows() {
    // The keyboard stays where it was in the list.
    int focused = -1;
    for (int at = 0; at < m_lines->count(); ++at)
        if (QWidget* line = m_lines->itemAt(at)->widget();
            line && (line == window()->focusWidget() || line->isAncestorOf(window()->focusWidget())))
            focused = at;
    empty(m_lines);
    const int shown = std::min(m_most, static_cast<int>(m_rows.size()));
    for (int at = 0; at < shown; ++at)
        m_lines->addWidget(makeRow(at));
    if (m_rows.size() > shown) {
        auto* more = new Button(tr("Show %1 more").arg(m_rows.size() - shown), Button::Kind::Quiet);
        more->setObjectName(m_name + QStringLiteral("More"));
        more->setTargetHeight(kActHeight);
        connect(more, &Button::clicked, this, &BenchRows::showMore, Qt::QueuedConnection);
        m_lines->addWidget(more);
    }
    setVisible(!m_rows.isEmpty());
    if (focused < 0 || shown == 0)
        return;
    if (QWidget* line = m_lines->itemAt(std::min(focused, shown - 1))->widget())
        for (QWidget* child : line->findChildren<QWidget*>())
            if (child->focusPolicy() & Qt::TabFocus)
                child->setFocus(Qt::OtherFocusReason);
}

QWidget* BenchRows::makeRow(int at) {
    const BenchRow& row = m_rows[at];
    auto* line = new QWidget;
    auto* across = new QHBoxLayout(line);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(kSpace8);
    auto* lines = new QVBoxLayout;
    lines->setSpacing(0);
    lines->addWidget((new Label(row.text, Type::Support))->wrapped());
    if (!row.second.isEmpty())
        lines->addWidget((new Label(row.second, Type::Small, &Tokens::ink2))->wrapped());
    across->addLayout(lines, 1);
    if (row.isSwitch) {
        auto* turn = new Switch(row.actName);
        turn->setText(row.act);
        turn->setObjectName(QStringLiteral("%1-%2").arg(m_name).arg(at));
        turn->setChecked(row.isOn);
        connect(turn, &QCheckBox::toggled, this, [this, at](bool isOn) { emit turned(at, isOn); });
        across->addWidget(turn, 0, Qt::AlignVCenter);
    } else if (!row.act.isEmpty()) {
        auto* act = new Button(row.act);
        act->setObjectName(QStringLiteral("%1-%2").arg(m_name).arg(at));
        act->setAccessibleName(row.actName);
        act->setTargetHeight(kActHeight);
        connect(act, &Button::clicked, this, [this, at] { emit acted(at); });
        across->addWidget(act, 0, Qt::AlignVCenter);
    }
    return line;
}

} // namespace holdfast::app
