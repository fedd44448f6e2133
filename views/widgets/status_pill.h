// A state in one word, with the shape that belongs to its colour.
#pragma once

#include "views/theme/theme.h"

#include <QWidget>

namespace rickyard::views {

class StatusPill : public QWidget
{
    Q_OBJECT

public:
    StatusPill(Role role, const QString &word, QWidget *parent = nullptr);

    // A pill always has a word; an empty one hides it.
    void setStatus(Role role, const QString &word);
    Role role() const { return role_; }
    QString word() const { return word_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

    // For delegates: paints the same pill into a cell, left aligned and centred upright.
    static void paint(QPainter *painter, const QRect &cell, Role role, const QString &word,
                      const Theme &look);
    static QSize sizeFor(const QString &word, const Theme &look);

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    Role role_;
    QString word_;
};

} // namespace rickyard::views
