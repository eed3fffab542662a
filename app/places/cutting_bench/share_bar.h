// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the film charged goes into: decals and their frames, offcuts worth keeping, what is lost. In the
// film's own shade, the offcuts hatched; the shares in words below.

#include "core/cutting/nest.h"

#include <QColor>
#include <QWidget>

namespace holdfast::app {

class ShareBar : public QWidget {
    Q_OBJECT

public:
    explicit ShareBar(QWidget* parent = nullptr);

    void set(const FilmShares& shares, const QColor& film);
    QString words() const; // "82 % decals and frames, 7 % offcuts, 11 % lost in this cut"

    QSize sizeHint() const override { return {300, 40}; }
    QSize minimumSizeHint() const override { return {240, 40}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    FilmShares m_shares;
    QColor m_film;
};

} // namespace holdfast::app
