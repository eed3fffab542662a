// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A sentence or two above a list of Press walk about what in it must not be overlooked, with the key that
// leads on. Its words are broken into lines and never cut. At the head of the walk it names what will be
// late; above what is aside, the order that is promised today.

#include <QAbstractButton>
#include <QKeySequence>

namespace holdfast::app {

class WalkNotice : public QAbstractButton {
    Q_OBJECT

public:
    explicit WalkNotice(const QKeySequence& key, QWidget* parent = nullptr);

    // `more` may be empty; without `what` it is hidden.
    void show(const QString& what, const QString& more);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QString m_key;
    QString m_what;
    QString m_more;
};

} // namespace holdfast::app
