from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("courses", "0003_pictures")]

    operations = [
        migrations.AlterField(
            model_name="hungpicture",
            name="purpose",
            field=models.CharField(
                choices=[
                    ("lesson", "lesson"),
                    ("lookalike", "look-alikes"),
                    ("paper", "attempt"),
                    ("tried", "tried plan"),
                ],
                max_length=9,
            ),
        )
    ]
