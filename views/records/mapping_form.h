// What the forms have in common that say what the columns of a foreign table are: how the file is
// written, in which zone its times are, and where a problem is shown.
#pragma once

#include "models/domain/outcome.h"
#include "models/exchange/weather_mapping.h"

#include <QComboBox>
#include <QHash>
#include <QLineEdit>

class QVBoxLayout;

namespace rickyard::views {

class FieldRow;

class MappingForm : public QWidget
{
    Q_OBJECT

public:
    // Puts what is wrong beside the part at fault; returns what has no part of its own.
    QStringList showProblems(const domain::Problems &problems);
    [[nodiscard]] QComboBox *separatorBox() const { return m_separator; }

Q_SIGNALS:
    void changed();
    // Another separator or row of headers: the file has to be split anew.
    void layoutChanged();

protected:
    explicit MappingForm(QWidget *parent);

    // `chars` that it shows at least.
    QComboBox *box(const QString &name, const QStringList &choices = {}, int chars = 8);
    FieldRow *row(const QString &key, const QString &label, QWidget *editor);
    [[nodiscard]] FieldRow *rowOf(const QString &key) const { return m_rows.value(key); }
    void nameRow(const QString &key, FieldRow *row) { m_rows.insert(key, row); }
    // The column in a box of columns. One that the file lacks stays chosen and says so, so that a
    // saved mapping is not changed by looking at it.
    static void choose(QComboBox *box, const QString &column);
    // The columns of a header, after a first entry for none.
    static void fillColumns(QComboBox *box, const QString &none, const QStringList &header);

    // Separator, decimal sign, row of headers, marks of a missing value.
    void buildLayout(QVBoxLayout *column, int headerLines, const QString &missing,
                     const QString &missingHelp);
    // Makes m_zoneKind and m_zone; the caller puts their rows where they belong.
    void makeZone();
    void showZoneHint();
    [[nodiscard]] exchange::TimeZoneKind zoneKind() const;
    // A problem of a part that has no row; false: none takes it.
    virtual bool showElsewhere(const domain::Problem &problem);
    virtual void clearElsewhere() {}

    // Between a mapping and the parts that every mapping has.
    template <class M>
    void showShared(const M &mapping)
    {
        pick(m_separator, QString(mapping.separator));
        pick(m_decimal, QString(mapping.decimal));
        pick(m_headerRow, mapping.headerLine);
        QStringList marks = mapping.missing;
        marks.removeAll(QString());
        m_missing->setText(marks.join(QLatin1Char(' ')));
        m_zoneKind->setCurrentIndex(static_cast<int>(mapping.zoneKind));
        m_zone->setText(zoneText(mapping.zoneKind, mapping.offsetSeconds, mapping.zone));
    }
    template <class M>
    void takeShared(M &mapping) const
    {
        mapping.separator = m_separator->currentData().toString().at(0);
        mapping.decimal = m_decimal->currentData().toString().at(0);
        mapping.headerLine = m_headerRow->currentData().toInt();
        mapping.missing =
            QStringList{QString()} + m_missing->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
        mapping.zoneKind = zoneKind();
        if (mapping.zoneKind == exchange::TimeZoneKind::FixedOffset)
            mapping.offsetSeconds = offset().value_or(mapping.offsetSeconds);
        else if (mapping.zoneKind == exchange::TimeZoneKind::Zone)
            mapping.zone = m_zone->text().trimmed();
    }

    QComboBox *m_zoneKind = nullptr;
    QLineEdit *m_zone = nullptr;

private:
    static void pick(QComboBox *box, const QVariant &data);
    static QString zoneText(exchange::TimeZoneKind kind, int offsetSeconds, const QString &zone);
    [[nodiscard]] std::optional<int> offset() const;

    QHash<QString, FieldRow *> m_rows;
    QComboBox *m_separator = nullptr;
    QComboBox *m_decimal = nullptr;
    QComboBox *m_headerRow = nullptr;
    QLineEdit *m_missing = nullptr;
};

} // namespace rickyard::views
