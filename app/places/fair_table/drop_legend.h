// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the two drops in the colour tiles mean; in two lines where one has no room for both.

#include <QWidget>

namespace holdfast::app {

class DropLegend : public QWidget {
    Q_OBJECT

public:
    explicit DropLegend(QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    bool isInOneLine() const;

    QString m_washed;
    QString m_unwashed;
};

} // namespace holdfast::app
