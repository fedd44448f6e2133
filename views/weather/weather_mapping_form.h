// How a file's columns become weather: every part of a mapping, in sight and changeable.
#pragma once

#include "models/exchange/weather_mapping.h"

#include <QHash>
#include <QWidget>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLineEdit;
class QVBoxLayout;

namespace rickyard::views {

class FieldRow;

class WeatherMappingForm : public QWidget
{
    Q_OBJECT

public:
    explicit WeatherMappingForm(QWidget *parent = nullptr);

    // The headers that columns are chosen from.
    void setHeader(const QStringList &header);
    void setMapping(const exchange::WeatherMapping &mapping);
    [[nodiscard]] exchange::WeatherMapping mapping() const;
    // Puts what is wrong beside the part at fault; returns what has no part of its own.
    QStringList showProblems(const domain::Problems &problems);

    [[nodiscard]] QComboBox *columnBox(const QString &quantity) const;
    [[nodiscard]] QComboBox *unitBox(const QString &quantity) const;
    [[nodiscard]] QComboBox *separatorBox() const { return m_separator; }
    [[nodiscard]] QLineEdit *placeField() const { return m_place; }

Q_SIGNALS:
    void changed();
    // Another separator or header row: the file has to be split anew.
    void layoutChanged();

private:
    struct Line {
        QComboBox *column = nullptr;
        QComboBox *unit = nullptr;
        FieldRow *row = nullptr;
    };
    void buildFile(QVBoxLayout *column);
    void buildTime(QVBoxLayout *column);
    void buildQuantities(QVBoxLayout *column);
    void buildRecords(QVBoxLayout *column);
    QComboBox *box(const QString &name);
    QComboBox *columnChoice(const QString &name);
    FieldRow *row(const QString &key, const QString &label, QWidget *editor);
    void fillColumns();
    void choose(QComboBox *box, const QString &column);
    void showTimeWay();

    exchange::WeatherMapping m_mapping; // parts that are not shown are kept
    QStringList m_header;
    QVector<QComboBox *> m_columnBoxes;
    QHash<QString, Line> m_quantities;
    QHash<QString, FieldRow *> m_rows;
    QComboBox *m_separator = nullptr;
    QComboBox *m_decimal = nullptr;
    QComboBox *m_headerRow = nullptr;
    QLineEdit *m_missing = nullptr;
    QComboBox *m_timeWay = nullptr;
    QComboBox *m_time = nullptr;
    QLineEdit *m_timeFormat = nullptr;
    QVector<QComboBox *> m_parts; // year, month, day, hour, minute
    QWidget *m_oneTime = nullptr;
    QWidget *m_partTimes = nullptr;
    QComboBox *m_zoneKind = nullptr;
    QLineEdit *m_zone = nullptr;
    QLineEdit *m_place = nullptr;
    QComboBox *m_placeColumn = nullptr;
    QCheckBox *m_normals = nullptr;
    QComboBox *m_outOfRange = nullptr;
    bool m_setting = false;
};

} // namespace rickyard::views
