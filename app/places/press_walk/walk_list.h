// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The list of the walk. The head of the run whose garments are in view stays at its top, so that the heat is
// always said.

#include <QElapsedTimer>
#include <QListView>

namespace holdfast::app {

class WalkModel;

class WalkList : public QListView {
    Q_OBJECT

public:
    explicit WalkList(const WalkModel& model, QWidget* parent = nullptr);

    // Clear of the head that stays.
    void scrollTo(const QModelIndex& index, ScrollHint hint = EnsureVisible) override;
    // Finds the garment whose number begins with what is typed.
    void keyboardSearch(const QString& typed) override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    // The head that stays above what is in view, and where; none while it is itself in view.
    QModelIndex headThatStays() const;
    QRect headBox(const QModelIndex& head) const;

    const WalkModel& m_model;
    QString m_typed;
    QElapsedTimer m_sinceTyped;
};

} // namespace holdfast::app
